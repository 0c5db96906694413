package process

import (
	"testing"

	"bodkin/templates"
)

// What is worked inside a piece says which part it is; a hem at its rim does
// not, and where two parts meet neither does.
func TestPartOfPiece(t *testing.T) {
	lines := []*line{
		{kind: "cuff", detail: &templates.Detail{}, pieces: []string{"cuff"}},
		{kind: "dart", detail: &templates.Detail{}, pieces: []string{"front"}},
		{kind: "hem", pieces: []string{"front", "cuff"}},
		{kind: "placket", detail: &templates.Detail{}, pieces: []string{"sleeve"}},
		{kind: "patch-pocket", detail: &templates.Detail{}, pieces: []string{"sleeve"}},
	}
	for piece, want := range map[string]string{"cuff": "cuff", "front": "", "sleeve": "", "back": ""} {
		if got := partOf(piece, lines); got != want {
			t.Errorf("the %s is the part %q, want %q", piece, got, want)
		}
	}
}
