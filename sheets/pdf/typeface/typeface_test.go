package typeface_test

import (
	"io"
	"math"
	"testing"
	"time"

	"bodkin/sheets/figure"
	"bodkin/sheets/pdf/typeface"

	"codeberg.org/go-pdf/fpdf"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
)

var _ figure.Measurer = (*typeface.Faces)(nil)

// alphabets are the letters and signs a sheet may need. Ranges from the
// Unicode code charts; Vietnamese letters as the blocks that hold them.
func alphabets() map[string][]rune {
	span := func(lo, hi rune) (out []rune) {
		for r := lo; r <= hi; r++ {
			out = append(out, r)
		}
		return out
	}
	return map[string][]rune{
		"Basic Latin":        span(0x20, 0x7e),
		"Latin-1":            span(0xa0, 0xff),
		"Latin Extended-A":   span(0x100, 0x17f),
		"Vietnamese":         append(span(0x1ea0, 0x1ef9), []rune("ĂăÂâĐđÊêÔôƠơƯư")...),
		"Yoruba":             []rune("ẸẹỌọṢṣÀÁÈÉÌÍÒÓÙÚǹńm̀"),
		"Hausa, Igbo, Ewe":   []rune("ƁɓƊɗƘƙƳƴỊịỌọỤụƉɖƐɛƑƒƔɣŊŋƆɔƲʋ"),
		"Greek":              append(span(0x391, 0x3a1), span(0x3a3, 0x3ce)...),
		"Cyrillic":           span(0x400, 0x45f),
		"fractions":          []rune("½¼¾⅓⅔⅛⅜⅝⅞⁄⁰¹²³⁴⁵⁶⁷⁸⁹₀₁₂₃₄₅₆₇₈₉"),
		"boxes":              []rune("☐☑☒✓✔"),
		"signs":              []rune("→←↑↓×±≤≥′″°·•…–—‘’“”„«»−≈²³‰€£©®™§¶†‡№✂⚠"),
		"spaces and hyphens": []rune("\u00a0\u2009\u202f\u2010\u2011\u2012"),
	}
}

func TestCoverage(t *testing.T) {
	var f typeface.Faces
	for name, runes := range alphabets() {
		for s := range typeface.Style(8) {
			for _, r := range runes {
				if _, ok := f.Advance(s, r); !ok {
					t.Errorf("%s: style %d has no %U %q", name, s, r, r)
				}
			}
		}
	}
	if f.Err() != nil {
		t.Error(f.Err())
	}
}

func TestMissing(t *testing.T) {
	var f typeface.Faces
	for _, r := range "縫\U0001F9F5\U0001D4D0\x07" {
		if _, ok := f.Advance(0, r); ok {
			t.Errorf("%U counts as present", r)
		}
	}
}

// The widths must be those fpdf writes into the file, since viewers go by them.
func TestWidthsAreThoseOfThePDF(t *testing.T) {
	var f typeface.Faces
	for s := range typeface.Style(8) {
		p := fpdf.New("P", "mm", "A4", "")
		p.SetCreationDate(time.Unix(0, 0))
		p.AddUTF8FontFromBytes("sans", "", s.TTF())
		p.AddPage()
		p.SetFont("sans", "", 10)
		_, mm := p.GetFontSize()
		for name, runes := range alphabets() {
			for _, r := range runes {
				if want, got := p.GetStringWidth(string(r)), f.Width(s, string(r), mm); math.Abs(want-got) > 1e-9 {
					t.Errorf("%s: style %d sets %U %v wide, fpdf %v", name, s, r, got, want)
				}
			}
		}
		if err := p.Output(io.Discard); err != nil {
			t.Fatal(err)
		}
	}
}

func TestHeights(t *testing.T) {
	parsed, err := sfnt.Parse(typeface.Style(0).TTF())
	if err != nil {
		t.Fatal(err)
	}
	m, err := parsed.Metrics(nil, fixed.I(2048), 0)
	if err != nil {
		t.Fatal(err)
	}
	for name, c := range map[string]struct {
		got  float64
		want fixed.Int26_6
	}{
		"capitals": {typeface.CapHeight, m.CapHeight},
		"x":        {typeface.XHeight, m.XHeight},
		"ascent":   {typeface.Ascent, m.Ascent},
		"descent":  {typeface.Descent, m.Descent},
	} {
		// sfnt counts heights of letters downwards, ascent and descent as lengths.
		if want := math.Abs(float64(c.want) / 64 / 2048); math.Abs(c.got-want) > 1e-9 {
			t.Errorf("%s: %v, the font says %v", name, c.got, want)
		}
	}
}
