// Package pdf draws Markdown as a PDF for the workbench. In go the Markdown of
// a sheet and its figures; out come the bytes of a PDF with bookmarks and
// links. The one idea is to lay everything out first, as a drawing list that
// can be tested, and draw it second. Start at Write; package typeface measures
// words before that, and package anchor knows the ids that links lead to.
package pdf

import (
	"fmt"
	"io"
	"maps"
	"slices"
	"strings"
	"time"

	"bodkin/sheets/figure"
	"bodkin/sheets/pdf/typeface"

	"golang.org/x/text/unicode/norm"
)

// Paper is the size of the sheet of paper.
type Paper int

// The papers: A4 and A5 by ISO 216, Letter 8 1/2 by 11 inches.
const (
	A4 Paper = iota
	A5
	Letter
)

func (p Paper) size() (width, height float64, err error) {
	switch p {
	case A4:
		return 210, 297, nil
	case A5:
		return 148, 210, nil
	case Letter:
		return 215.9, 279.4, nil
	}
	return 0, 0, fmt.Errorf("paper %d is not known; A4, A5 and Letter are", int(p))
}

// Options say how the sheet is set. The zero value is good: A4, 10.5 pt.
type Options struct {
	Paper    Paper
	TypeSize float64 // pt, 6 to 24; 0 means 10.5

	// StepHead is the size of the number that a heading of level 3 begins with,
	// in sizes of the body, 1 to 3; 0 means that of the words, 1.12.
	StepHead float64

	// Apart begins a page with every heading of level 2 but the first, which
	// stands below the opening; for papers that are handed to different people.
	Apart bool

	// Title stands at the head of every page and in the file's properties;
	// empty means the words of the first heading. RunningHead stands opposite.
	Title, RunningHead string
	Author             string
	Lang               string // a language tag such as en or vi-VN

	// Figures are drawn where an image's destination is their key.
	Figures map[string]figure.Figure

	// Date goes into the file's properties; zero means 1 January 2000, so that
	// one sheet always gives the same bytes.
	Date time.Time

	// Replace stands in for each rune the fonts cannot show; empty makes them
	// an error.
	Replace string

	// Notice goes into the file's properties as its subject.
	Notice string
}

// Write draws CommonMark with tables, task lists and strikethrough as a PDF.
// A heading of level 3 followed by a paragraph that is one bold or italic run
// opens a step: it is kept on one page if it fits, and that paragraph, its
// settings, is set on a grey strip.
// Raw HTML is shown as text, images that are no figures as their alternative
// text; links lead to headings, http, https and mailto, others are words only.
// A table's row is torn only if it is taller than a page.
//
// A rune without a glyph is a *MissingGlyphsError. Other errors are text that
// is not UTF-8, figures without a size, options out of range, and w's own.
func Write(w io.Writer, markdown []byte, o Options) error {
	d, err := lay(markdown, &o)
	if err != nil {
		return err
	}
	return writePDF(w, d, o)
}

// TypeTooLargeError is of a type size too large for the paper. Most is the largest
// whole one that is not; both are in points.
type TypeTooLargeError struct {
	Size float64
	Most int
}

func (e *TypeTooLargeError) Error() string {
	return fmt.Sprintf("type of %g pt is too large for this paper", e.Size)
}

// leastEms is how many type sizes wide the body has to be, so that a table's words
// need not be broken: the house's own.
const leastEms = 20

// lay works out the drawing, and fills in the options that were left open.
func lay(markdown []byte, o *Options) (*drawing, error) {
	width, height, err := o.Paper.size()
	if err != nil {
		return nil, err
	}
	if err := o.settle(); err != nil {
		return nil, err
	}
	blocks, err := read(markdown, o.Figures)
	if err != nil {
		return nil, err
	}
	side, top, bottom := paperMargin(width)
	if most := (width - 2*side) / leastEms / mmPerPoint; o.TypeSize > most {
		return nil, &TypeTooLargeError{Size: o.TypeSize, Most: int(most)}
	}
	d := &drawing{width: width, height: height, body: figure.Box{Left: side, Top: top, Right: width - side, Bottom: height - bottom}}
	f := &flow{
		typesetter: &typesetter{replace: o.Replace, ids: headingIDs(blocks, map[string]bool{})},
		measure:    measureOf(o.TypeSize, o.StepHead),
		tall:       d.body.Height(),
		apart:      o.Apart,
	}
	f.document(blocks, frame{d.body.Left, d.body.Right})
	f.compose(d)
	if o.Title == "" {
		for _, b := range d.bookmarks {
			o.Title = b.title
			break
		}
	}
	o.Title = f.showable(typeface.Bold, o.Title, "the title")
	o.RunningHead = f.showable(0, o.RunningHead, "the running head")
	o.Author = f.showable(0, o.Author, "the author's name")
	o.Notice = f.showable(0, o.Notice, "the notice")
	frameOn(d, f.typesetter, o.Title, o.RunningHead)
	return d, f.err()
}

// settle checks the options and brings their texts to NFC.
func (o *Options) settle() error {
	if o.TypeSize == 0 {
		o.TypeSize = 10.5
	}
	if !(o.TypeSize >= 6 && o.TypeSize <= 24) {
		return fmt.Errorf("a type size of %v pt cannot be set; give 6 to 24", o.TypeSize)
	}
	if o.StepHead == 0 {
		o.StepHead = usualStep
	}
	if !(o.StepHead >= 1 && o.StepHead <= 3) {
		return fmt.Errorf("headings of steps cannot be %v times as large as the body; give 1 to 3", o.StepHead)
	}
	if strings.IndexFunc(o.Lang, func(r rune) bool {
		return r != '-' && (r < '0' || r > '9') && (r < 'a' || r > 'z') && (r < 'A' || r > 'Z')
	}) >= 0 {
		return fmt.Errorf("%q is not a language tag; give one such as en or vi-VN", o.Lang)
	}
	for _, key := range slices.Sorted(maps.Keys(o.Figures)) {
		if err := o.Figures[key].Check(); err != nil {
			return fmt.Errorf("figure under %q: %w", key, err)
		}
	}
	for _, text := range []*string{&o.Title, &o.RunningHead, &o.Author, &o.Notice} {
		*text = norm.NFC.String(strings.Join(strings.Fields(*text), " "))
	}
	return nil
}
