// Package templates holds garments: parametric descriptions of pieces, the
// joins between their edges, what becomes of the free edges, and the details
// inside them.
//
// In goes a garment's YAML, measures and choices; out comes a [Made] garment
// with true outlines and measured edges. The one idea: a garment states its
// structure, never an order of work; everything that must come first is derived
// from which edges meet where. Start at [Load] and [Garment.Make]. Geometry is
// the business of templates/outline.
package templates
