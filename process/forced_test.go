package process_test

import (
	"slices"
	"strings"
	"testing"

	"bodkin/process"
	"bodkin/templates"
)

// No order has fewer changes than the chain tells: looked at from the plan alone,
// each operation of a chain waits for the one before it and wants another value;
// and no proved order, nor a published one, beats what is proved.
func TestForcedChanges(t *testing.T) {
	shelf := loadShelf(t)
	for _, name := range []string{"shell-top", "open-jacket", "pull-on-skirt"} {
		g, err := templates.Load(name)
		if err != nil {
			t.Fatal(err)
		}
		p := plan(t, jobFor(g, "cotton-lawn", "silk-satin"), rooms()[3], shelf)
		before := map[string][]string{} // everything that an operation waits for
		for _, o := range p.Operations {
			for _, a := range o.After {
				before[o.ID] = append(append(before[o.ID], a.ID), before[a.ID]...)
			}
		}
		for _, f := range p.Order.Forced {
			if f.Least > f.Made {
				t.Errorf("%s: %s of %s is changed %d times, and at least %d", name, f.What, f.Station, f.Made, f.Least)
			}
			if f.Because == "" || len(f.Values) == 0 {
				t.Errorf("%s: no word on why %s is changed", name, f.What)
			}
			for k := 1; k < len(f.Chain); k++ {
				a, b := f.Chain[k-1], f.Chain[k]
				if a.Value == b.Value || !slices.Contains(before[b.Operation], a.Operation) || len(b.Because) == 0 {
					t.Errorf("%s: %s in %s does not force %s in %s", name, a.Operation, a.Value, b.Operation, b.Value)
				}
			}
		}
		b := p.Order.Textbook
		if b == nil {
			t.Fatalf("%s: no published order fits", name)
		}
		if p.Order.Proved && b.ChangeMinutes < p.Order.ChangeMinutes-1e-9 {
			t.Errorf("%s: %s costs %.2f minutes, less than the %.2f that are proved", name, b.Title, b.ChangeMinutes, p.Order.ChangeMinutes)
		}
		if refused := p.CheckOrder(b.Seams); len(refused) > 0 && name != "shell-top" {
			t.Errorf("%s: %s cannot be kept: %v", name, b.Title, refused)
		}
	}
}

// A seam in one colour that lies between two in another forces two changes: the
// front band of the jacket is joined up in its own colour, sewn on in the
// garment's, and stitched down in its own again.
func TestForcedByWhatLiesBetween(t *testing.T) {
	g, err := templates.Load("open-jacket")
	if err != nil {
		t.Fatal(err)
	}
	p := plan(t, jobFor(g, "cotton-lawn", "cotton-poplin"), rooms()[0], loadShelf(t))
	i := slices.IndexFunc(p.Order.Forced, func(f process.Forced) bool { return f.What == "thread" })
	if i < 0 {
		t.Fatal("no change of thread is forced")
	}
	f := p.Order.Forced[i]
	if want := []string{"dusk blue", "reed green", "dusk blue"}; !slices.Equal(f.Values, want) || f.Least != 2 {
		t.Errorf("forced: %v, %d times, want %v", f.Values, f.Least, want)
	}
	for _, w := range []string{"wants reed green", "then the", "wants dusk blue"} {
		if !strings.Contains(f.Because, w) {
			t.Errorf("%q does not say %q", f.Because, w)
		}
	}
}

// Where a published order has a seam before another that it waits for here, the
// plan says so with the reason, and with each such pair its own precedence agrees:
// something of the first comes after something of the second, whatever the order.
func TestWhereABookCannotBeKept(t *testing.T) {
	shelf := loadShelf(t)
	want := map[string]process.BookWait{
		// "crotch, sides, inseams" of a trouser workroom's page (common) against
		// each leg made first.
		"pull-on-trousers": {Seam: "crotch seam", For: "inseam", Because: "the crotch seam runs over the end of the inseam"},
		// The Unit Method of Construction (textbook) sets sleeves after the sides.
		"knit-tee": {Seam: "side and underarm seam", For: "armhole seam", Because: "the side and underarm seam runs over the end of the armhole seam"},
	}
	for _, name := range templates.Names() {
		g, err := templates.Load(name)
		if err != nil {
			t.Fatal(err)
		}
		p := plan(t, jobFor(g, "cotton-lawn", "cotton-poplin"), rooms()[0], shelf)
		b := p.Order.Textbook
		if b == nil {
			if _, wanted := want[name]; wanted {
				t.Errorf("%s has no published order", name)
			}
			continue
		}
		title := map[string]string{}
		for _, s := range p.Seams {
			title[s.Name] = s.Title
		}
		seamOf := map[string]string{}
		for _, o := range p.Operations {
			seamOf[o.ID] = title[o.Seam]
		}
		for _, w := range b.Waits {
			found := false
			for _, o := range p.Operations {
				for _, a := range o.After {
					found = found || seamOf[o.ID] == w.Seam && seamOf[a.ID] == w.For && a.Because == w.Because
				}
			}
			if !found {
				t.Errorf("%s: nothing of the %s waits for the %s because %s", name, w.Seam, w.For, w.Because)
			}
		}
		if w, ok := want[name]; ok && !slices.Contains(b.Waits, w) {
			t.Errorf("%s: %+v is not among %+v", name, w, b.Waits)
		}
	}
}
