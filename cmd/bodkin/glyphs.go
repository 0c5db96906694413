package main

import (
	"errors"
	"fmt"
	"slices"
	"strings"
	"unicode/utf8"

	"bodkin/seams"
	"bodkin/seams/form"
	"bodkin/sheets/pdf"
)

// unprintable tells signs that the typeface of the PDF does not have by their
// places in the maker's files, where the words of the sheet come from, and type
// that is too large for its paper.
func (g *gathered) unprintable(err error) error {
	if large, ok := errors.AsType[*pdf.TypeTooLargeError](err); ok {
		return wrong(fmt.Sprintf("give %d at the most, or larger --paper", large.Most), "--type-size: %v", large)
	}
	missing, ok := errors.AsType[*pdf.MissingGlyphsError](err)
	if !ok {
		return err
	}
	var faults form.Faults
	for _, m := range missing.Runes {
		at := g.find(m.Rune)
		if at == (form.Place{}) {
			return cannot("write Markdown instead, which may hold any sign", "cannot write the PDF: %v", err)
		}
		faults = append(faults, form.FaultAt(at, fmt.Sprintf("the typeface of the PDF has no sign %q (%U)", m.Rune, m.Rune), "",
			"write it another way, or write Markdown, which may hold any sign"))
	}
	return g.placed(faults.Err())
}

// find is the first place of a sign in the files that were read, the maker's own
// shelf last.
func (g *gathered) find(r rune) form.Place {
	for _, f := range slices.Concat(g.files, g.own) {
		if at, ok := firstPlace(f, r); ok {
			return at
		}
	}
	return form.Place{}
}

func firstPlace(f seams.File, r rune) (form.Place, bool) {
	number := 0
	for line := range strings.Lines(strings.TrimPrefix(string(f.Data), "\ufeff")) {
		number++
		if i := strings.IndexRune(line, r); i >= 0 {
			return form.Place{File: f.Name, Line: number, Column: utf8.RuneCountInString(line[:i]) + 1}, true
		}
	}
	return form.Place{}, false
}
