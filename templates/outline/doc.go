// Package outline is the plane geometry of flat pieces: closed outlines of
// named edges, each edge a run of straight lines, circular arcs and Bézier
// curves.
//
// In go points and control points in mm; out come lengths, bends, areas,
// reflections and cut lines. The one idea: an edge keeps its name through every
// operation, so that whatever is measured or refused can be told by name.
// Start at [New] for a net outline and [Outline.Cut] for its cut line. The
// package knows nothing of cloth and imports nothing but the standard library.
package outline
