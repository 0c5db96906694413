package process_test

import (
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"bodkin/process"
)

// Each cloth is pressed in its own way. Pile on a needle board from the wrong
// side: Working with Napped Fabrics, Guideline 4.218; wool with steam through a
// damp cloth: L. R. Lane, Extension Bulletin 533, Oregon State College, 1939;
// silk from the wrong side with an iron barely warm, cottons mostly without a
// cloth: I. D. Conover, A Complete Course in Dressmaking, vol. 1, 1921, p. 115;
// one dot bears no steam: care-label pages (ISO 3758). That silk wants a dry
// cloth: common practice, no source.
func TestPressingOfTheStep(t *testing.T) {
	tests := []struct {
		cloth string
		want  process.Pressed
		steam bool
		words string
	}{
		{"velvet", process.Pressed{Side: "wrong", Cloth: "none", Over: []string{"needle board"}, Moves: "lift"}, true, "needle board"},
		{"wool-flannel", process.Pressed{Side: "wrong", Cloth: "damp", Over: []string{}, Moves: "lift"}, true, "a damp cloth between"},
		{"silk-georgette", process.Pressed{Side: "wrong", Cloth: "dry", Over: []string{}, Moves: "lift"}, false, "a dry cloth between"},
		{"cotton-lawn", process.Pressed{Side: "either", Cloth: "none", Over: []string{}, Moves: "slide"}, true, ""},
	}
	for _, tt := range tests {
		t.Run(tt.cloth, func(t *testing.T) {
			n := 0
			for _, o := range chosen(t, loadShelf(t), jobFor(garmentOf(t, "pull-on-skirt"), tt.cloth, tt.cloth), rooms()[0]).Operations {
				if o.Does != "press" {
					continue
				}
				n++
				if d := cmp.Diff(&tt.want, o.Pressed); d != "" || o.Setting.Steam != tt.steam {
					t.Errorf("%s, steam %v: %s", o.ID, o.Setting.Steam, d)
				}
				if said := strings.Contains(o.Text, " For "); !strings.Contains(o.Text, tt.words) || said != (tt.words != "") {
					t.Errorf("%s does not say %q: %s", o.ID, tt.words, o.Text)
				}
			}
			if n == 0 {
				t.Fatal("nothing is pressed")
			}
		})
	}
}

// A ring too narrow for the board is pressed over a sleeve board: the armholes
// of the top, worked in the round, and not its hem. Common practice, no source.
func TestSleeveBoardForNarrowRings(t *testing.T) {
	over := map[string]bool{}
	for _, o := range chosen(t, loadShelf(t), jobFor(garmentOf(t, "shell-top"), "cotton-lawn", "cotton-lawn"), rooms()[0]).Operations {
		if o.Pressed != nil && slices.Contains(o.Pressed.Over, "sleeve board") {
			over[o.Seam] = true
		}
	}
	if !over["armhole"] || over["hem"] || over["side"] {
		t.Errorf("over a sleeve board: %v", over)
	}
}
