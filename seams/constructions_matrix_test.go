package seams_test

import (
	"fmt"
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
	scenes, judged int
}

func newWalk() walk {
	return walk{holds: map[string]int{}, weighed: map[string]int{}, done: map[string]int{}, measured: map[string]int{}, enough: map[string]bool{}}
}

// add counts what another walk has counted.
func (w *walk) add(other walk) {
	w.scenes += other.scenes
	w.judged += other.judged
	for i, from := range []map[string]int{other.holds, other.weighed, other.done, other.measured} {
		to := []map[string]int{w.holds, w.weighed, w.done, w.measured}[i]
		for key, n := range from {
			to[key] += n
		}
	}
}

// The matrix of cloths, lines and rooms, walked once. Whatever the cloth, the
// line and the room, hands only included, there is a way to do the work; what
// is chosen is not excluded, can be done with what stands in the room, and
// measures. No rule is dead, none always holds but one that says so by when:
// true, and every pass is done somewhere; one that may be left out is left out
// somewhere. The shapes of line are shared out to a worker a core.
func TestMatrix(t *testing.T) {
	s := everyCloth(t)
	type place struct {
		need  need
		shape shape
	}
	var places []place
	for _, n := range needs() {
		for _, sh := range n.shapes {
			places = append(places, place{n, sh})
		}
	}
	work := make(chan place)
	walks := make([]walk, runtime.GOMAXPROCS(0))
	var done sync.WaitGroup
	for i := range walks {
		walks[i] = newWalk()
		done.Go(func() {
			for p := range work {
				walks[i].place(t, s, p.need, p.shape)
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
	t.Logf("%d combinations of %d cloths, %d kinds of line and %d rooms (those walked once that a kind of work cannot tell apart); %d judgements of %d constructions",
		all.scenes, len(s.Cloths), len(places), len(rooms()), all.judged, len(s.Constructions))
	for i := range s.Constructions {
		all.report(t, &s.Constructions[i])
	}
}

func (w *walk) place(t *testing.T, s *seams.Shelf, n need, sh shape) {
	for _, sc := range scenes(t, s, n, sh) {
		verdicts, err := s.Weigh(n.work, n.kind, sc.facts)
		if err != nil {
			t.Error(err)
			return
		}
		w.scenes++
		w.judged += len(verdicts)
		answer(t, sc, verdicts[0])
		w.rules(verdicts)
		if sc.varied {
			w.passes(sc, verdicts)
		}
	}
}

func answer(t *testing.T, sc scene, best seams.Verdict) {
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
	for _, p := range sized.Passes {
		if p.Pass.Stitch != "" && !sc.facts.Workroom.Forms(p.Pass.Stitch) {
			t.Errorf("%s: pass %d of %s wants stitch %s, which nothing in the room forms", sc.title, p.Number, c.Name, p.Pass.Stitch)
		}
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
