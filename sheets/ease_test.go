package sheets

import (
	"bytes"
	"math"
	"testing"
)

// The formula by hand: six words of one syllable in one sentence are
// 206.835 - 1.015·6 - 84.6·1 = 116.145; R. Flesch, A new readability yardstick,
// Journal of Applied Psychology 32 (1948).
func TestReadingEaseByHand(t *testing.T) {
	for _, tt := range []struct {
		text string
		want float64
	}{
		{"The cat sat on the mat.", 116.145},
		{"Press the seam open. Pin the edge.", 206.835 - 1.015*3.5 - 84.6*8/7}, // o-pen
		{"", 0},
		{"… — .", 0},
		{"Sew 15 mm", 206.835 - 1.015*3 - 84.6},
	} {
		if got := ReadingEase(tt.text); math.Abs(got-tt.want) > 1e-9 {
			t.Errorf("%q: %.3f, want %.3f", tt.text, got, tt.want)
		}
	}
}

// Syllables of words that the sheets use, as a dictionary divides them (from
// memory).
func TestSyllables(t *testing.T) {
	for word, want := range map[string]int{
		"seam": 1, "edge": 1, "needle": 2, "pressed": 1, "folded": 2, "fitted": 2, "allowance": 3, "garment": 2, "stitch": 1,
		"binding": 2, "cut": 1, "table": 2, "machine": 2, "(side)": 1, "15": 1, "sleeve": 1, "turned": 1, "raw": 1, "—": 0,
	} {
		if got := syllablesOf(word); got != want {
			t.Errorf("%s: %d syllables, want %d", word, got, want)
		}
	}
}

// A learner's sheet tells how easily its steps are read, and they are no harder
// than plain English: 60 and more in Flesch's table.
func TestClassSheetIsEasilyRead(t *testing.T) {
	for _, n := range plans(t) {
		ease := easeOf(n.plan)
		if ease < 60 {
			t.Errorf("%s: reading ease %g", n.name, ease)
		}
		if md := Compose(n.plan, Options{For: Class}).Markdown; !bytes.Contains(md, []byte("Reading ease of the steps: ")) {
			t.Errorf("%s: the sheet does not tell its reading ease", n.name)
		}
		t.Logf("%s: %g, %s", n.name, ease, newComposer(n.plan, Options{}).easeWords(ease))
	}
}
