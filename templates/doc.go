// Package templates holds garments: parametric descriptions of pieces, the
// joins between their edges, what becomes of the free edges, and the details
// inside them.
//
// In goes a garment's YAML, measures and choices; out comes a [Made] garment
// with true outlines and measured edges. The one idea: a garment states its
// structure, never an order of work; everything that must come first is derived
// from which edges meet where. Start at [Load] and [Garment.Make]. Geometry is
// the business of templates/outline.
//
// The way through, a file each:
//
//	parse     the YAML, its names and formulas    names.go, formulas.go
//	connect   which edges meet where              topology.go, chain.go, uses.go
//	make      given measures and choices          given.go
//	          points, curves, dart mouths         draft.go, dart.go
//	          lengths, bends, joins walked        measure.go, join.go, treatment.go
//	          will it go on, will it work         checks.go
package templates
