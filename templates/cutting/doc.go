// Package cutting is the cutter's arithmetic: strips and their joins, bias,
// ruffles, pleats, circle skirts, elastic, buttonholes, cloth of another width,
// and how much cloth a simple lay takes.
//
// In go lengths in mm, out come lengths in mm and whole numbers of things to
// cut. The one idea: every rule of thumb is held to the geometry behind it, and
// where a rule falls short the geometry is what is returned. Each rule names
// its source. Start at [Strip] for strips, at [Lay] for cloth and at [Chalk] for
// marking a piece on the cloth without a paper pattern. Shapes are the business
// of templates/outline.
package cutting
