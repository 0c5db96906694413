// Package typeface measures words set in DejaVu Sans and tells which runes it
// has no glyph for. In go a style and words; out come widths in mm, the very
// widths a PDF viewer uses (whole thousandths of the type size). The one idea
// is that measuring needs no PDF, so layout and labels can be worked out first.
// Start at Faces; its TextWidth makes it a figure.Measurer.
package typeface

import (
	"fmt"
	"math"

	"codeberg.org/go-fonts/dejavu/dejavusans"
	"codeberg.org/go-fonts/dejavu/dejavusansbold"
	"codeberg.org/go-fonts/dejavu/dejavusansboldoblique"
	"codeberg.org/go-fonts/dejavu/dejavusanscondensed"
	"codeberg.org/go-fonts/dejavu/dejavusanscondensedbold"
	"codeberg.org/go-fonts/dejavu/dejavusanscondensedboldoblique"
	"codeberg.org/go-fonts/dejavu/dejavusanscondensedoblique"
	"codeberg.org/go-fonts/dejavu/dejavusansoblique"
	"golang.org/x/image/font"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
)

// Style is a sum of Bold, Oblique and Condensed; 0 is the regular style.
type Style uint8

// The parts of a style.
const (
	Bold Style = 1 << iota
	Oblique
	Condensed

	styles = 8
)

// Heights of the design in type sizes, from the OS/2 tables of DejaVu Sans
// 2.37 (1493 and 1120 of 2048 units) and, for letters with marks above and the
// deepest tails, its hhea table (1901 and 483 of 2048).
const (
	CapHeight = 1493.0 / 2048
	XHeight   = 1120.0 / 2048
	Ascent    = 1901.0 / 2048
	Descent   = 483.0 / 2048
)

// TTF is the font file of the style. It must not be changed.
func (s Style) TTF() []byte {
	switch s {
	case Bold:
		return dejavusansbold.TTF
	case Oblique:
		return dejavusansoblique.TTF
	case Bold | Oblique:
		return dejavusansboldoblique.TTF
	case Condensed:
		return dejavusanscondensed.TTF
	case Condensed | Bold:
		return dejavusanscondensedbold.TTF
	case Condensed | Oblique:
		return dejavusanscondensedoblique.TTF
	case Condensed | Bold | Oblique:
		return dejavusanscondensedboldoblique.TTF
	}
	return dejavusans.TTF
}

// Faces are the styles read so far; each is read when it is first asked for.
// The zero value is ready. It is not for use by two goroutines at once.
type Faces struct {
	faces [styles]*face
	err   error
}

type face struct {
	font   *sfnt.Font
	buffer sfnt.Buffer
	known  map[rune]int // thousandths of the type size, or none
}

const none = -1

// Err is the first error met in reading a font file, nil as a rule.
func (f *Faces) Err() error { return f.err }

// Advance is the rune's width in thousandths of the type size, and whether the
// style has a glyph for it. Runes above U+FFFF, which the PDF fonts cannot
// hold, count as missing.
func (f *Faces) Advance(s Style, r rune) (thousandths int, ok bool) {
	fc := f.face(s % styles)
	if fc == nil {
		return 0, false
	}
	w, seen := fc.known[r]
	if !seen {
		w = fc.measure(r)
		fc.known[r] = w
	}
	return max(w, 0), w != none
}

// Width is the words' width in mm at a type size in mm. Missing runes count 0.
func (f *Faces) Width(s Style, words string, size float64) float64 {
	sum := 0
	for _, r := range words {
		w, _ := f.Advance(s, r)
		sum += w
	}
	return float64(sum) * size / 1000
}

// TextWidth is Width in the regular or bold style.
func (f *Faces) TextWidth(words string, size float64, bold bool) float64 {
	if bold {
		return f.Width(Bold, words, size)
	}
	return f.Width(0, words, size)
}

func (f *Faces) face(s Style) *face {
	if f.faces[s] == nil && f.err == nil {
		parsed, err := sfnt.Parse(s.TTF())
		if err != nil {
			f.err = fmt.Errorf("reading the font of style %d: %w", s, err)
			return nil
		}
		f.faces[s] = &face{font: parsed, known: make(map[rune]int, 128)}
	}
	return f.faces[s]
}

func (fc *face) measure(r rune) int {
	if r > 0xFFFF || r < 0 {
		return none
	}
	glyph, err := fc.font.GlyphIndex(&fc.buffer, r)
	if err != nil || glyph == 0 {
		return none
	}
	em := fc.font.UnitsPerEm()
	units, err := fc.font.GlyphAdvance(&fc.buffer, glyph, fixed.Int26_6(em), font.HintingNone)
	if err != nil {
		return none
	}
	return int(math.Round(float64(units) * (1000.0 / float64(em))))
}
