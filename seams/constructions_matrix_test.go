package seams_test

import (
	"fmt"
	"maps"
	"runtime"
	"slices"
	"strings"
	"sync"
	"testing"

	"bodkin/seams"
)

// walk gathers what the rules and passes do over all scenes.
type walk struct {
	holds, weighed map[string]int // rules that held, constructions judged
	done, measured map[string]int // passes done, constructions measured
	enough         map[string]bool
	rows           map[sewn]bool
	scenes, judged int
}

func newWalk() walk {
	return walk{holds: map[string]int{}, weighed: map[string]int{}, done: map[string]int{}, measured: map[string]int{}, enough: map[string]bool{}, rows: map[sewn]bool{}}
}

// add counts what another walk has counted.
func (w *walk) add(other walk) {
	w.scenes += other.scenes
	w.judged += other.judged
	maps.Copy(w.rows, other.rows)
	for i, from := range []map[string]int{other.holds, other.weighed, other.done, other.measured} {
		to := []map[string]int{w.holds, w.weighed, w.done, w.measured}[i]
		for key, n := range from {
			to[key] += n
		}
	}
}

// The matrix of cloths, lines and rooms. Whatever the cloth, the line and the
// room, hands only included, there is a way to do the work; what is chosen is
// not excluded, can be done with what stands in the room, has words, adds up,
// and asks for no needle, stitch, heat or thread that is not for the cloth. No
// rule is dead, none always holds but one that says so by when: true, and every
// pass is done somewhere; one that may be left out is left out somewhere. The
// lines are shared out to a worker a core.
func TestMatrix(t *testing.T) {
	s := everyCloth(t)
	cloths := sampled(s.Cloths)
	var places []spot
	for _, n := range needs() {
		for _, sh := range n.shapes {
			places = append(places, spot{n, sh})
		}
	}
	work := make(chan spot)
	walks := make([]walk, runtime.GOMAXPROCS(0))
	var done sync.WaitGroup
	for i := range walks {
		walks[i] = newWalk()
		done.Go(func() {
			for p := range work {
				walks[i].place(t, s, p.need, p.shape, cloths)
			}
		})
	}
	for _, p := range places {
		work <- p
	}
	close(work)
	done.Wait()
	all := newWalk()
	for _, w := range walks {
		all.add(w)
	}
	first := len(needs()) * len(cloths) * len(rooms())
	t.Logf("%d combinations of %d kinds of work, %d cloths and %d rooms, and further lines (%d in all), linings, favours and second cloths: "+
		"%d questions that differ, %d judgements of %d constructions, %d kinds of rows",
		first, len(needs()), len(cloths), len(rooms()), len(places), all.scenes, all.judged, len(s.Constructions), len(all.rows))
	for row := range all.rows {
		settings(t, s, row)
	}
	if len(cloths) < len(s.Cloths) {
		t.Logf("under the race detector %d of %d cloths are walked, and dead rules are not looked for", len(cloths), len(s.Cloths))
		return
	}
	for i := range s.Constructions {
		all.report(t, &s.Constructions[i])
	}
}

// spot is a line of a kind that a need occurs on.
type spot struct {
	need  need
	shape shape
}

// sampled are the cloths to walk: all, or under the race detector, which is ten
// times slower, every oneIn-th.
func sampled(cloths []seams.Cloth) []seams.Cloth {
	var out []seams.Cloth
	for i := 0; i < len(cloths); i += oneIn {
		out = append(out, cloths[i])
	}
	return out
}

func (w *walk) place(t *testing.T, s *seams.Shelf, n need, sh shape, cloths []seams.Cloth) {
	for _, sc := range scenes(t, s, n, sh, cloths) {
		verdicts, err := s.Weigh(n.work, n.kind, sc.facts)
		if err != nil {
			t.Error(err)
			return
		}
		w.scenes++
		w.judged += len(verdicts)
		w.answer(t, s, sc, verdicts[0])
		w.rules(verdicts)
		if sc.varied {
			w.passes(sc, verdicts)
		}
	}
}

// answer holds what is chosen against the laws of the matrix.
func (w *walk) answer(t *testing.T, s *seams.Shelf, sc scene, best seams.Verdict) {
	t.Helper()
	c := best.Construction
	if !best.Allowed() {
		t.Errorf("%s: nothing is left; %s: %s", sc.title, c.Name, strings.Join(best.RuledOut, "; "))
		return
	}
	if askedFor(c) {
		t.Errorf("%s: %s is taken, and the design has not asked for it", sc.title, c.Name)
	}
	if c.Iron && !sc.facts.Workroom.Iron {
		t.Errorf("%s: %s needs an iron that is not there", sc.title, c.Name)
	}
	sized, err := c.Measure(sc.facts)
	if err != nil {
		if !sc.house {
			t.Errorf("%s: %v", sc.title, err)
		}
		return
	}
	if len(sized.Passes) == 0 {
		t.Errorf("%s: %s leaves nothing to do", sc.title, c.Name)
	}
	balanced(t, sc.title, c, sized)
	for _, p := range sized.Passes {
		act, err := s.Act(p.Pass.Does)
		if err != nil {
			t.Errorf("%s: %v", sc.title, err)
			continue
		}
		if p.Pass.Text == "" || p.Pass.Good == "" {
			t.Errorf("%s: pass %d of %s lacks words", sc.title, p.Number, c.Name)
		}
		if p.Pass.Stitch != "" && !sc.facts.Workroom.Forms(p.Pass.Stitch) {
			t.Errorf("%s: pass %d of %s wants stitch %s, which nothing in the room forms", sc.title, p.Number, c.Name, p.Pass.Stitch)
		}
		if act.Station == "iron" && c.Iron && sc.facts.Cloth.HeatDots == 0 {
			t.Errorf("%s: pass %d of %s cannot be done without an iron, which the cloth does not bear", sc.title, p.Number, c.Name)
		}
		if p.Pass.Stitch != "" && act.Station == "machine" {
			w.rows[sewn{sc.facts.Cloth, p.Pass.Stitch, max(2, c.Layers), p.StitchMM}] = true
		}
	}
}

// balanced: what a seam or a turned edge is cut with is used up by its parts.
// An enclosed seam takes its first row, its second and the turn of the cloth,
// and what is trimmed is narrower than the second; a hem that is turned takes
// its depth, what is turned under and the turns.
func balanced(t *testing.T, title string, c *seams.Construction, z seams.Sized) {
	t.Helper()
	has := func(names ...string) bool {
		return !slices.ContainsFunc(names, func(n string) bool { _, ok := z.Size(n); return !ok })
	}
	switch {
	case c.Inside == "enclosed" && has("first", "second", "turn", "trim"):
		trim, _ := z.Size("trim")
		second, _ := z.Size("second")
		if got := sum(z, "first", "second", "turn"); !near(got, z.Allowance, 1e-9) || trim >= second {
			t.Errorf("%s: %s: first, second and turn make %g of %g mm; trimmed to %g under a row at %g", title, c.Name, got, z.Allowance, trim, second)
		}
	case has("depth", "turn_under", "turn") && c.Strip == nil:
		if got := sum(z, "depth", "turn_under", "turn"); !near(got, z.Allowance, 1e-9) {
			t.Errorf("%s: %s: depth, turned under and turns make %g of %g mm", title, c.Name, got, z.Allowance)
		}
	}
	if z.Allowance < 0 || z.AllowanceB < 0 || z.Allowance > 250 {
		t.Errorf("%s: %s is cut with %g and %g mm", title, c.Name, z.Allowance, z.AllowanceB)
	}
}

// sewn is a row of machine stitching in a cloth; a length of 0 is the cloth's own.
type sewn struct {
	cloth  seams.ClothFacts
	stitch string
	layers int
	length float64
}

// settings: the needle is for the cloth and its thread goes through it, and the
// stitch is as long as machines make it and published tables ask for. Needle by
// weight of cloth: Choose regular needle size by fabric weight, a thread and
// needle table, two domestic machine manuals (very light 60 to 70, light 65 to
// 80, medium 70 to 90, heavy 80 to 110, very heavy up to 120). Stitch: basting
// and easing up to 5 mm, fine work from 1 mm (class notes; a page of stitch
// conversions).
func settings(t *testing.T, s *seams.Shelf, r sewn) {
	t.Helper()
	facts := seams.Facts{Cloth: r.cloth, Applied: r.cloth}
	n, err := s.NeedleForRow(facts, seams.Row{Layers: r.layers, Stitch: r.stitch})
	if err != nil {
		t.Error(err)
		return
	}
	low, high := 60, 75
	switch weight := r.cloth.Weight; {
	case weight >= 350, weight >= 320 && r.layers >= 4:
		low, high = 80, 120
	case weight >= 150:
		low, high = 70, 100
	case weight >= 50:
		low, high = 60, 90
	}
	if n.NM < low || n.NM > high {
		t.Errorf("%v g/m² is sewn with NM %d, and NM %d to %d is for it", r.cloth.Weight, n.NM, low, high)
	}
	if parts := n.Point == "ballpoint" || n.Point == "stretch"; r.cloth.Knit && !r.cloth.Lace && !r.cloth.Coated && !parts {
		t.Errorf("a knit of %v g/m² is sewn with a %s point", r.cloth.Weight, n.Point)
	}
	length := r.length
	if length == 0 {
		length = n.Stitch
	}
	if length < 0.3 || length > 6 {
		t.Errorf("a row of %s with stitches of %g mm in %v g/m²", r.stitch, length, r.cloth.Weight)
	}
}

// askedFor reports whether a construction is one that the design has to ask
// for: something always speaks against it.
func askedFor(c *seams.Construction) bool {
	return slices.ContainsFunc(c.SpeaksAgainst, func(r seams.Rule) bool { return r.When.Value == "true" })
}

func (w *walk) rules(verdicts []seams.Verdict) {
	for _, v := range verdicts {
		name := v.Construction.Name
		w.weighed[name]++
		for _, why := range v.RuledOut {
			w.holds[name+" ruled out: "+why]++
		}
		for _, r := range v.For {
			w.holds[name+" for: "+r.Because]++
		}
		for _, r := range v.Against {
			w.holds[name+" against: "+r.Because]++
		}
	}
}

func (w *walk) passes(sc scene, verdicts []seams.Verdict) {
	for _, v := range verdicts {
		if !v.Allowed() || w.enough[v.Construction.Name] {
			continue
		}
		sized, err := v.Construction.Measure(sc.facts)
		if err != nil {
			continue // answer reports what should have measured
		}
		w.measured[v.Construction.Name]++
		for _, p := range sized.Passes {
			w.done[fmt.Sprint(v.Construction.Name, " ", p.Number)]++
		}
		w.enough[v.Construction.Name] = w.seen(v.Construction)
	}
}

// seen reports whether every pass has been done and every one that may be left
// out has been left out, so that measuring again would tell nothing new.
func (w *walk) seen(c *seams.Construction) bool {
	measured := w.measured[c.Name]
	for i, p := range c.Passes {
		n := w.done[fmt.Sprint(c.Name, " ", i+1)]
		if n == 0 || !p.When.IsZero() && n == measured {
			return false
		}
	}
	return true
}

func (w *walk) report(t *testing.T, c *seams.Construction) {
	t.Helper()
	parts := []struct {
		part  string
		rules []seams.Rule
	}{{"ruled out", c.RuledOut}, {"for", c.SpeaksFor}, {"against", c.SpeaksAgainst}}
	for _, p := range parts {
		written := map[string]bool{}
		for _, r := range p.rules {
			key := c.Name + " " + p.part + ": " + r.Because
			switch n := w.holds[key]; {
			case n == 0:
				t.Errorf("dead rule: %s (when %s)", key, r.When.Value)
			case n >= w.weighed[c.Name] && !(p.part == "against" && r.When.Value == "true"):
				t.Errorf("rule that always holds: %s (when %s)", key, r.When.Value)
			}
			if written[r.Because] {
				t.Errorf("the same reason twice: %s", key)
			}
			written[r.Because] = true
		}
	}
	for i, p := range c.Passes {
		switch n := w.done[fmt.Sprint(c.Name, " ", i+1)]; {
		case n == 0:
			t.Errorf("%s: pass %d (%s, when %s) is never done", c.Name, i+1, p.Does, p.When.Value)
		case !p.When.IsZero() && n == w.measured[c.Name]:
			t.Errorf("%s: pass %d (%s) is always done, so its condition %s says nothing", c.Name, i+1, p.Does, p.When.Value)
		}
	}
}
