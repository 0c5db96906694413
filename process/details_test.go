package process_test

import (
	"slices"
	"strings"
	"testing"

	"bodkin/process"
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

// A shirt's collar, stand, cuffs and front bands are steadied, before anything
// else is done to them; its collar is made up before the fronts are joined, as
// all published operation lists of shirts put small parts first (P. Sarkar, 17
// Dec 2011, and two factory lists), and its buttons lie evenly.
func TestShirtParts(t *testing.T) {
	shelf := loadShelf(t)
	g, err := templates.Load("shirt-blouse")
	if err != nil {
		t.Fatal(err)
	}
	for _, w := range rooms() {
		p := plan(t, jobFor(g, "cotton-poplin", "cotton-poplin"), w, shelf)
		var steadied []string
		for _, f := range p.Interfacing {
			steadied = append(steadied, f.Title)
		}
		if want := []string{"cuff", "Stand", "Collar", "Front band"}; !slices.Equal(steadied, want) {
			t.Errorf("%s: steadied are %q, want %q", w.Name, steadied, want)
		}
		at := map[string]int{}
		holes := ""
		for k, o := range p.Operations {
			if _, ok := at[o.ID]; !ok {
				at[o.ID] = k
			}
			if o.Seam == "front-buttonhole" {
				holes += o.Text
			}
		}
		for _, x := range [][2]string{{"interface.cuff", "cuff.1"}, {"interface.collar-stand", "collar.1"}, {"interface.collar-fall", "collar.1"}, {"front-band.1", "front-band.2"}} {
			first, ok := at[x[0]]
			then, ok2 := at[x[1]]
			if ok2 && (!ok || first > then) {
				t.Errorf("%s: %s does not come before %s", w.Name, x[0], x[1])
			}
		}
		for _, o := range p.Begin([]string{"collar.1", "collar.2"}).Done {
			if strings.HasPrefix(o, "yoke-shoulder.") || strings.HasPrefix(o, "yoke.") {
				t.Errorf("%s: the collar cannot be begun before %s", w.Name, o)
			}
		}
		if !strings.Contains(holes, "7 of them, 84.") {
			t.Errorf("%s: no spacing in %q", w.Name, holes)
		}
		for _, n := range p.Notions {
			if n.Name == "button" && n.Count != 7+1+2 {
				t.Errorf("%s: %d buttons", w.Name, n.Count)
			}
		}
	}
}

// A waistcoat's lining is stitched and turned where it may be, felled by hand where
// neat work is wanted or nothing sews a row, and as the job insists; its armholes,
// through which it is turned, come after it.
func TestWaistcoatLining(t *testing.T) {
	shelf := loadShelf(t)
	g, err := templates.Load("lined-waistcoat")
	if err != nil {
		t.Fatal(err)
	}
	for _, x := range []struct {
		cloth, favour, insisted string
		room                    *process.Workroom
		edge, armhole           string
	}{
		{"cotton-poplin", "", "", rooms()[0], "lining-edge-bagged", "lining-armhole-felled"},
		{"cotton-poplin", "quick", "", rooms()[0], "lining-edge-bagged", "lining-armhole-stitched"},
		{"wool-flannel", "neat", "", rooms()[0], "lining-edge-felled", "lining-armhole-felled"},
		{"velvet", "", "", rooms()[0], "lining-edge-felled", "lining-armhole-felled"},
		{"cotton-poplin", "", "", rooms()[1], "lining-edge-felled", "lining-armhole-felled"},
		{"cotton-poplin", "", "lining-edge-felled", rooms()[0], "lining-edge-felled", "lining-armhole-felled"},
	} {
		j := jobFor(g, x.cloth, "acetate-lining")
		j.Favour = text(x.favour)
		if x.insisted != "" {
			j.Seams = form.Pairs[form.Text]{{Key: text("lining"), Value: text(x.insisted)}}
		}
		p := plan(t, j, x.room, shelf)
		checkOrder(t, p)
		for _, s := range p.Seams {
			want := map[string]string{"lining": x.edge, "lining-armhole": x.armhole}[s.Name]
			if want != "" && s.Construction != want {
				t.Errorf("%s, %q, %q: the %s is a %s, want %s", x.cloth, x.favour, x.insisted, s.Title, s.Construction, want)
			}
		}
		in := ""
		for _, o := range p.Operations {
			if o.Seam == "lining" || o.Seam == "lining-armhole" {
				in += o.Seam + " "
			}
		}
		if strings.Contains(in, "lining-armhole lining ") {
			t.Errorf("%s: an armhole is begun before the lining is in: %s", x.cloth, in)
		}
	}
}

// A tuck is sewn before the hem that takes its ends in, and a hem before the
// pleats that are folded with it: by their lines, not by their names.
func TestTucksAndPleatsBesideHems(t *testing.T) {
	for _, x := range []struct {
		garment       string
		choices       form.Pairs[form.Text]
		wrong, reason string
	}{
		{"apron", form.Pairs[form.Text]{{Key: text("tucks"), Value: text("three")}}, "side tuck", "side edge takes in the ends of the tuck"},
		{"pleated-skirt", nil, "front-pleat hem", "hem is turned while it lies flat"},
	} {
		g, err := templates.Load(x.garment)
		if err != nil {
			t.Fatal(err)
		}
		j := jobFor(g, "cotton-lawn", "cotton-lawn")
		j.Choices = x.choices
		p := plan(t, j, rooms()[0], loadShelf(t))
		checkOrder(t, p)
		var told []string
		for _, r := range p.CheckOrder(strings.Fields(x.wrong)) {
			told = append(told, r.Because)
		}
		if got := strings.Join(told, "; "); !strings.Contains(got, x.reason) {
			t.Errorf("%s: of %s nothing says %q but %q", x.garment, x.wrong, x.reason, got)
		}
	}
}

// What opens one side of a pair of seams is left open on that side alone.
func TestZipOnTheLeft(t *testing.T) {
	g, err := templates.Load("six-gore-skirt")
	if err != nil {
		t.Fatal(err)
	}
	p := plan(t, jobFor(g, "cotton-poplin", "cotton-lawn"), rooms()[0], loadShelf(t))
	all := ""
	for _, o := range p.Operations {
		all += o.Text + "\n"
	}
	if words := "On the left leave 18 cm open for the zip in the left side seam, from the waistband on."; strings.Count(all, words) != 1 {
		t.Errorf("%q stands %d times", words, strings.Count(all, words))
	}
}
