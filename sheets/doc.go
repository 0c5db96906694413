// Package sheets tells a plan to the person who sews: in goes a [process.Plan],
// out comes a [Sheet], the step sheet as Markdown with its figures as values.
//
// The one idea: the Markdown is the document. It reads well as it stands, and
// PDF and HTML are made from the same bytes. Every number on it comes from the
// plan and none is left to compute; every word of its own stands in wording.go.
//
// Start at [Compose]; shared work, a class and several garments in one sitting have
// their own: [ComposeShare], [ComposeClass], [ComposeSitting]. Drawing on paper is the business of sheets/pdf, the
// strokes that figures are made of of sheets/figure.
package sheets
