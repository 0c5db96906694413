package process_test

import (
	"context"
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"
	"time"

	"bodkin/process"
	"bodkin/seams"
	"bodkin/seams/form"
	"bodkin/templates"

	"github.com/google/go-cmp/cmp"
)

const everything = "{press: 3, cut: 3, pin: 3, straight: 3, curves: 3, delicate: 3, overlocker: 3, hand: 3, fitting: 3}"

// crewOf is a room with the maker and up to four who help her.
func crewOf(t testing.TB, n int) *process.Workroom {
	t.Helper()
	people := []string{
		"{name: Ada, can: " + everything + `, from: "8:00", until: "23:00"}`,
		`{name: Bea, can: {press: 3, cut: 2, pin: 3, straight: 2, delicate: 2, hand: 2}, pace: 1.2, from: "8:00", until: "23:00"}`,
		`{name: Cyd, can: {press: 2, pin: 2, hand: 1, delicate: 2}, pace: 1.5, from: "8:30", until: "23:00"}`,
		`{name: Dot, can: ` + everything + `, pace: 2, from: "8:00", until: "12:00"}`,
		`{name: Eve, can: {straight: 2, curves: 2, delicate: 1}, from: "9:00", until: "23:00"}`,
	}
	text := "name: Crew\nmachines:\n  - {is: straight-stitcher}\n  - {is: straight-stitcher}\n  - {is: overlocker-4}\niron: steam\npeople:\n"
	for _, p := range people[:n] {
		text += "  - " + p + "\n"
	}
	w, err := process.ParseWorkroom("crew.yaml", []byte(text))
	if err != nil {
		t.Fatal(err)
	}
	return w
}

func shared(t testing.TB, shelf *seams.Shelf, name string, w *process.Workroom, nodes int) (*process.Share, error) {
	t.Helper()
	g, err := templates.Load(name)
	if err != nil {
		t.Fatal(err)
	}
	return process.ShareOut(t.Context(), process.Input{Job: jobFor(g, "silk-georgette", "silk-satin"), Garment: g, Workroom: w, Shelf: shelf}, nodes)
}

// TestLawsOfSharing: every operation once, after all it waits for and after its
// piece has come, at a free place, by somebody who can, is there, and does
// nothing else: every garment of the shelf with crews of one to five.
func TestLawsOfSharing(t *testing.T) {
	shelf := loadShelf(t)
	for _, name := range templates.Names() {
		for n := 1; n <= 5; n++ {
			t.Run(fmt.Sprint(name, n), func(t *testing.T) {
				t.Parallel()
				w := crewOf(t, n)
				s, err := shared(t, shelf, name, w, 20)
				if err != nil {
					t.Fatal(err)
				}
				if err := lawful(s, w); err != nil {
					t.Fatal(err)
				}
			})
		}
	}
}

// lawful checks a share by its own words alone.
func lawful(s *process.Share, w *process.Workroom) error {
	type doing struct {
		turn   process.Turn
		person int
	}
	done := map[string]doing{}
	hands := 0
	for q, b := range s.People {
		last := 0.0
		for _, t := range b.Turns {
			if t.Begin < last-1e-6 || t.Begin < b.From-1e-6 || t.End > b.Until+1e-6 || t.Begin > t.Work+1e-6 {
				return fmt.Errorf("%s does %s from %g to %g", b.Name, t.Operation.ID, t.Begin, t.End)
			}
			last = t.End
			if _, twice := done[t.Operation.ID]; twice {
				return fmt.Errorf("%s is done twice", t.Operation.ID)
			}
			done[t.Operation.ID] = doing{t, q}
			hands += len(t.From)
			for _, a := range t.Asked {
				level := 0
				for _, c := range w.People[q].Can {
					if c.Key.Value == a.Skill {
						level = c.Value
					}
				}
				if level < a.Level {
					return fmt.Errorf("%s does %s, which asks for %s %d", b.Name, t.Operation.ID, a.Skill, a.Level)
				}
			}
			pace := map[string]float64{"": 1, "1.2": 1.2, "1.5": 1.5, "2": 2}[w.People[q].Pace.Value]
			if long := t.End - t.Work; long < t.Operation.Minutes*pace-1e-6 || long > t.Operation.Minutes*pace+0.1*pace+0.1+1e-6 {
				return fmt.Errorf("%s takes %g for %g at pace %g", t.Operation.ID, long, t.Operation.Minutes, pace)
			}
		}
	}
	if hands != len(s.Handed) {
		return fmt.Errorf("%d hand-overs on the benches, %d on the maker's page", hands, len(s.Handed))
	}
	at := map[string][]process.Turn{}
	for id, d := range done {
		for _, a := range d.turn.Operation.After {
			before, ok := done[a.ID]
			if !ok || before.turn.End > d.turn.Begin+1e-6 {
				return fmt.Errorf("%s begins at %g, before %s is done at %g", id, d.turn.Begin, a.ID, before.turn.End)
			}
		}
		if d.turn.Machine != "Table" && d.turn.Operation.Station != "hand" {
			at[d.turn.Machine] = append(at[d.turn.Machine], d.turn)
		}
	}
	for machine, turns := range at {
		slices.SortFunc(turns, func(a, b process.Turn) int { return a.Number - b.Number })
		for k := 1; k < len(turns); k++ {
			if turns[k].Begin < turns[k-1].End-1e-6 {
				return fmt.Errorf("%s: %s and %s at once", machine, turns[k-1].Operation.ID, turns[k].Operation.ID)
			}
		}
	}
	return nil
}

func TestMoreHandsOfOneKindAreNotLater(t *testing.T) {
	shelf := loadShelf(t)
	one, err := shared(t, shelf, "shell-top", crewOf(t, 1), 300)
	if err != nil {
		t.Fatal(err)
	}
	two, err := shared(t, shelf, "shell-top", crewOf(t, 2), 300)
	if err != nil {
		t.Fatal(err)
	}
	if two.Finish > one.Finish || len(one.Handed) != 0 {
		t.Errorf("two finish at %g, one at %g with %d hand-overs", two.Finish, one.Finish, len(one.Handed))
	}
	if len(two.Handed) == 0 || len(two.People[1].Turns) == 0 {
		t.Error("nothing is given away")
	}
}

// TestWhatCanBeGivenAway: an assistant for two hours gets only what she can do,
// in her hours, and the maker is freed of that time.
func TestWhatCanBeGivenAway(t *testing.T) {
	shelf := loadShelf(t)
	for _, name := range templates.Names() {
		w := crewOf(t, 2)
		w.People[1].From.Value, w.People[1].Until.Value = "8:00", "10:00"
		s, err := shared(t, shelf, name, w, 40)
		if err != nil {
			t.Fatal(err)
		}
		if len(s.GiveAway) != 1 || len(s.GiveAway[0].Operations) == 0 {
			t.Fatalf("%s: nothing is given away: %+v", name, s.GiveAway)
		}
		g := s.GiveAway[0]
		asked := map[string][]process.Asked{}
		minutes := map[string]float64{}
		for _, b := range s.People {
			for _, turn := range b.Turns {
				asked[turn.Operation.ID], minutes[turn.Operation.ID] = turn.Asked, turn.Operation.Minutes
			}
		}
		last, freed := 0.0, 0.0
		for _, o := range g.Operations {
			if o.Begin < last-1e-6 || o.Begin+o.Minutes > 120+1e-6 {
				t.Errorf("%s: %s from %g takes %g, the last ended at %g", name, o.Operation, o.Begin, o.Minutes, last)
			}
			last = o.Begin + o.Minutes
			freed += minutes[o.Operation]
			for _, a := range asked[o.Operation] {
				if !slices.ContainsFunc(w.People[1].Can, func(c form.Pair[int]) bool { return c.Key.Value == a.Skill && c.Value >= a.Level }) {
					t.Errorf("%s: %s asks for %s %d", name, o.Operation, a.Skill, a.Level)
				}
			}
		}
		if math.Abs(freed-g.Frees) > 0.1*float64(len(g.Operations))+0.1 {
			t.Errorf("%s: frees %g, its operations take %g", name, g.Frees, freed)
		}
	}
}

func TestSameShareTwice(t *testing.T) {
	shelf := loadShelf(t)
	a, err := shared(t, shelf, "shell-top", crewOf(t, 3), 150)
	if err != nil {
		t.Fatal(err)
	}
	b, err := shared(t, shelf, "shell-top", crewOf(t, 3), 150)
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(a, b); diff != "" {
		t.Error(diff)
	}
}

func TestFaultsOfSharing(t *testing.T) {
	shelf := loadShelf(t)
	room := "machines:\n  - {is: straight-stitcher}\niron: steam\n"
	for name, c := range map[string]struct{ people, want string }{
		"nobody":        {"", "the workroom names no people"},
		"no hours":      {"people:\n  - {name: Ada, can: {press: 1}}\n", `w.yaml:5:12: "Ada" has no hours`},
		"two of a name": {"people:\n  - {name: Ada, from: \"9:00\", until: \"9:30\"}\n  - {name: Ada, from: \"9:00\", until: \"9:30\"}\n", `w.yaml:6:12: two people are called "Ada"`},
		"skill":         {"people:\n  - {name: Ada, can: {pres: 1}, from: \"9:00\", until: \"9:30\"}\n", `no skill "pres"`},
		"level":         {"people:\n  - {name: Ada, can: {press: 9}, from: \"9:00\", until: \"9:30\"}\n", "level 9 of press"},
		"pace":          {"people:\n  - {name: Ada, pace: fast, from: \"9:00\", until: \"9:30\"}\n", `cannot read "fast" as a pace`},
		"backwards":     {"people:\n  - {name: Ada, from: \"9:00\", until: \"8:30\"}\n", "8:30 is not after 9:00"},
		"no time":       {"people:\n  - {name: Ada, from: nine, until: \"8:30\"}\n", `cannot read "nine" as a time of day`},
		"cannot":        {"people:\n  - {name: Ada, can: {press: 1}, from: \"9:00\", until: \"19:00\"}\n", "nobody in the room can do"},
		"too short":     {"people:\n  - {name: Ada, can: " + everything + ", from: \"9:00\", until: \"9:30\"}\n", "there for the|these hours"},
	} {
		t.Run(name, func(t *testing.T) {
			w, err := process.ParseWorkroom("w.yaml", []byte(room+c.people))
			if err == nil {
				_, err = shared(t, shelf, "shell-top", w, 50)
			}
			if err == nil || !slices.ContainsFunc(strings.Split(c.want, "|"), func(s string) bool { return strings.Contains(err.Error(), s) }) {
				t.Fatalf("%v, want %q", err, c.want)
			}
			_, faults := errors.AsType[form.Faults](err)
			_, cannot := errors.AsType[*process.CannotError](err)
			if !faults && !cannot {
				t.Errorf("a %T", err)
			}
		})
	}
}

// alikeCrew is the same room with three old hands.
func alikeCrew(t testing.TB) *process.Workroom {
	w := crewOf(t, 3)
	for q := range w.People[1:] {
		name := w.People[q+1].Name
		w.People[q+1] = w.People[0]
		w.People[q+1].Name = name
	}
	return w
}

// BenchmarkShareOut shares every garment of the shelf in two seconds at most
// among three people, alike and of three paces and skills, and reports how far
// the bound is from the finish.
func BenchmarkShareOut(b *testing.B) {
	for _, name := range templates.Names() {
		b.Run("alike/"+name, func(b *testing.B) { shareOut(b, name, alikeCrew(b)) })
		b.Run("mixed/"+name, func(b *testing.B) { shareOut(b, name, crewOf(b, 3)) })
	}
}

func shareOut(b *testing.B, name string, w *process.Workroom) {
	g, err := templates.Load(name)
	if err != nil {
		b.Fatal(err)
	}
	in := process.Input{Job: jobFor(g, "silk-georgette", "silk-satin"), Garment: g, Workroom: w, Shelf: loadShelf(b)}
	b.ReportAllocs()
	var s *process.Share
	for b.Loop() {
		ctx, cancel := context.WithTimeout(b.Context(), 2*time.Second)
		if s, err = process.ShareOut(ctx, in, 12_000); err != nil {
			b.Fatal(err)
		}
		cancel()
	}
	operations := 0
	for _, p := range s.People {
		operations += len(p.Turns)
	}
	b.ReportMetric(float64(operations), "operations")
	b.ReportMetric(100*(s.Finish-s.Bound)/s.Bound, "%gap")
}
