package process_test

import (
	"strings"
	"testing"

	"bodkin/seams/form"
	"bodkin/templates"
)

// A pocket comes before the side seam in which it lies, and the facing after the
// zip, each with its reason; the rows that close the seams leave the openings
// open.
func TestZipPocketAndFacing(t *testing.T) {
	g, err := templates.Load("a-line-skirt")
	if err != nil {
		t.Fatal(err)
	}
	j := jobFor(g, "cotton-lawn", "cotton-lawn")
	j.Choices = form.Pairs[form.Text]{{Key: text("pockets"), Value: text("in-seam")}}
	for _, w := range rooms() {
		p := plan(t, j, w, loadShelf(t))
		checkOrder(t, p)
		checkSeams(t, p, loadShelf(t))
		for _, x := range []struct{ wrong, because string }{
			{"side pocket", "sewn on while the pieces lie flat"},
			{"waist zip", "waist edge closes over the end of the zip"},
		} {
			var told []string
			for _, r := range p.CheckOrder(strings.Fields(x.wrong)) {
				told = append(told, r.Because)
			}
			if got := strings.Join(told, "; "); !strings.Contains(got, x.because) {
				t.Errorf("%s: of %s nothing says %q but %q", w.Name, x.wrong, x.because, got)
			}
		}
		// Interfacing is the first of all steps in the general order of work of
		// Amaden-Crawford, A Guide to Fashion Sewing: also on the facing, before its
		// parts are joined.
		begun, held := false, 0
		for _, o := range p.Operations {
			if strings.HasPrefix(o.ID, "waist.") && !strings.HasPrefix(o.ID, "waist.stay") {
				begun = true
			}
			if strings.HasPrefix(o.ID, "interface.") {
				held++
				if begun {
					t.Errorf("%s: %s comes after the facing was begun", w.Name, o.ID)
				}
			}
		}
		if held != 2 {
			t.Errorf("%s: %d pieces are steadied, want both facings", w.Name, held)
		}
		all := ""
		for _, o := range p.Operations {
			all += o.Text + "\n"
		}
		for _, words := range []string{"Leave 18 cm open for the zip, from the waist edge on.",
			"Leave 16 cm open for the side pocket, between its marks.", "Turn its ends under beside the zip"} {
			if strings.Count(all, words) != 1 {
				t.Errorf("%s: %q stands %d times", w.Name, words, strings.Count(all, words))
			}
		}
	}
}
