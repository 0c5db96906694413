package process_test

import (
	"context"
	"errors"
	"fmt"
	"os"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"bodkin/process"
	"bodkin/process/order"
	"bodkin/seams"
	"bodkin/seams/form"
	"bodkin/templates"
)

func classOf(t testing.TB, text string) process.ClassInput {
	t.Helper()
	c, err := process.ParseClass("class.yaml", []byte(text))
	if err != nil {
		t.Fatal(err)
	}
	g, err := templates.Load(c.Make.Value)
	if err != nil {
		t.Fatal(err)
	}
	shelf, err := seams.Load()
	if err != nil {
		t.Fatal(err)
	}
	return process.ClassInput{Class: c, Garment: g, Shelf: shelf}
}

func demoClass(t testing.TB) string {
	t.Helper()
	data, err := os.ReadFile("testdata/class.yaml")
	if err != nil {
		t.Fatal(err)
	}
	return string(data)
}

func taught(t testing.TB, text string) *process.ClassPlan {
	t.Helper()
	p, err := process.Teach(t.Context(), classOf(t, text), order.Options{})
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// lawsOfTheClass checks a class with code of its own: one number for one act on
// one part, an order that every student can keep, sessions that hold and end
// where nothing lies pinned, and sums that add up.
func lawsOfTheClass(t *testing.T, p *process.ClassPlan) {
	t.Helper()
	place := map[string]int{}
	for k, n := range p.Numbers {
		if _, twice := place[n.Number]; twice {
			t.Errorf("number %s stands twice", n.Number)
		}
		place[n.Number] = k
		have := slices.Clone(n.Free)
		for _, v := range n.Variants {
			have = append(have, v.Students...)
		}
		slices.Sort(have)
		var want []string
		for _, s := range p.Students {
			want = append(want, s.Name)
		}
		slices.Sort(want)
		if diff := cmp.Diff(want, have); diff != "" {
			t.Errorf("number %s is not told to each once:\n%s", n.Number, diff)
		}
	}
	act := map[string]string{}
	var change float64
	for _, s := range p.Students {
		change += s.Change
		if s.Change < s.Alone-1e-9 {
			t.Errorf("%s changes less in the class (%g) than by herself (%g)", s.Name, s.Change, s.Alone)
		}
		operation := map[string]process.Operation{}
		for _, o := range s.Plan.Operations {
			operation[o.ID] = o
		}
		if len(s.Turns) != len(operation) || len(s.Turns)+len(s.Free) != len(p.Numbers) {
			t.Errorf("%s: %d turns and %d free of %d numbers, %d operations", s.Name, len(s.Turns), len(s.Free), len(p.Numbers), len(operation))
		}
		done := map[string]bool{}
		last := -1
		lying := map[string]string{} // seam: its last act
		minutes := map[int]float64{} // by session
		ready := map[string]bool{}   // session, kind and what she needs ready
		for k, turn := range s.Turns {
			o := operation[turn.Operation]
			if place[turn.Number] <= last {
				t.Errorf("%s: number %s comes too late", s.Name, turn.Number)
			}
			if k > 0 {
				from, to := p.Numbers[last], p.Numbers[place[turn.Number]]
				if from.Session != to.Session || from.Homework != to.Homework {
					for seam, does := range lying {
						if does == "pin" || does == "place" || does == "fold" || does == "turn" {
							t.Errorf("%s: %s lies with its %s open at the end of session %d", s.Name, seam, does, from.Session)
						}
					}
				}
			}
			last = place[turn.Number]
			if n := p.Numbers[last]; !n.Homework {
				minutes[n.Session] += turn.Minutes
				for kind, what := range map[string]string{"needle": o.Setting.Needle, "foot": o.Setting.Foot, "heat": fmt.Sprint(o.Setting.HeatDots)} {
					if what != "" && what != "0" {
						ready[fmt.Sprint(n.Session, kind, what)] = true
					}
				}
			}
			for _, a := range o.After {
				if !done[a.ID] {
					t.Errorf("%s: %s before %s", s.Name, o.ID, a.ID)
				}
			}
			done[o.ID] = true
			if o.Seam != "" {
				lying[o.Seam] = o.Does
			}
			what := o.Does + " " + o.Seam
			if o.Seam == "" {
				what = o.ID
			}
			if act[turn.Number] == "" {
				act[turn.Number] = what
			}
			if act[turn.Number] != what {
				t.Errorf("number %s is %q for one and %q for %s", turn.Number, act[turn.Number], what, s.Name)
			}
		}
		told := map[string]bool{}
		for _, x := range p.Sessions {
			for _, r := range x.Ready {
				if slices.Contains(r.Students, s.Name) && slices.Contains([]string{"needle", "foot", "heat"}, r.Kind) {
					what := r.What
					if r.Kind == "heat" {
						what = fmt.Sprint(r.HeatDots)
					}
					told[fmt.Sprint(x.Number, r.Kind, what)] = true
				}
			}
			if minutes[x.Number] > x.Work+0.1*float64(len(s.Turns)) {
				t.Errorf("%s has %g minutes in session %d, which holds %g", s.Name, minutes[x.Number], x.Number, x.Work)
			}
		}
		if diff := cmp.Diff(ready, told); diff != "" {
			t.Errorf("%s: what is to be ready (-needed +told):\n%s", s.Name, diff)
		}
	}
	if d := change - p.Order.Change; d > 1e-6 || d < -1e-6 {
		t.Errorf("changes are %g, said to be %g", change, p.Order.Change)
	}
	if next := 0; true {
		for _, x := range p.Sessions {
			if place[x.First] != next {
				t.Errorf("session %d begins with %s", x.Number, x.First)
			}
			next = place[x.Last] + 1 + len(x.Homework)
		}
		if next != len(p.Numbers) {
			t.Errorf("the sessions end after %d of %d numbers", next, len(p.Numbers))
		}
	}
}

func TestLawsOfTheClass(t *testing.T) {
	p := taught(t, demoClass(t))
	lawsOfTheClass(t, p)
	if !p.Order.Cheapest {
		t.Error("the sequence of the demo is not proved")
	}
}

// classFor is a small class that sews a garment in three cloths.
func classFor(garment string, cloths ...string) string {
	var b strings.Builder
	fmt.Fprintf(&b, "class: Trial\nmake: %s\nsessions: {count: 12, length: 3 h}\nroom:\n  machines: [{is: straight-stitcher, count: 2}, {is: overlocker-3}]\n  irons: 1\nstudents:\n", garment)
	g, err := templates.Load(garment)
	if err != nil {
		panic(err)
	}
	for k, cloth := range cloths {
		fmt.Fprintf(&b, "  - name: S%d\n    cloth:\n", k)
		for _, c := range g.Cloths {
			fmt.Fprintf(&b, "      %s: {is: %s, colour: c%d}\n", c.Key.Value, cloth, k)
		}
	}
	return b.String()
}

// TestClassesOfAllGarments: whatever is on the shelf can be sewn by a class in
// cloths that ask for different seams. Garments that these cloths or this room
// do not suit are counted, and most must be suited. Each garment meets two of
// the cloths.
func TestClassesOfAllGarments(t *testing.T) {
	unsuited := 0
	cloths := []string{"silk-georgette", "cotton-poplin", "linen-medium", "silk-georgette"}
	for k, name := range templates.Names() {
		t.Run(name, func(t *testing.T) {
			p, err := process.Teach(t.Context(), classOf(t, classFor(name, cloths[k%3:k%3+2]...)), order.Options{Nodes: 20_000})
			if _, cannot := errors.AsType[*process.CannotError](err); cannot || isFaults(err) {
				t.Logf("not suited: %v", err)
				unsuited++
				return
			}
			if err != nil {
				t.Fatal(err)
			}
			lawsOfTheClass(t, p)
		})
	}
	if all := len(templates.Names()); unsuited > all/4 {
		t.Errorf("%d of %d garments are not suited to the class", unsuited, all)
	}
}

func isFaults(err error) bool {
	_, ok := errors.AsType[form.Faults](err)
	return ok
}

// held is the numbers of a plan as they stand in a class's file.
func held(p *process.ClassPlan) string {
	var b strings.Builder
	b.WriteString("numbers:\n")
	for _, n := range p.Numbers {
		fmt.Fprintf(&b, "  %q: %s\n", n.Number, n.Key)
	}
	return b.String()
}

// TestNumbersThatAreHeldStay: a student comes in whose cloth wants other seams;
// everybody else keeps every number.
func TestNumbersThatAreHeldStay(t *testing.T) {
	before := classFor("shell-top", "cotton-poplin", "cotton-lawn")
	was := taught(t, before)
	after := before + "  - name: New\n    cloth: {main: {is: silk-georgette, colour: rose}, binding: {is: silk-habotai, colour: ink}}\n" + held(was)
	is := taught(t, after)
	lawsOfTheClass(t, is)
	for m, s := range was.Students {
		number := map[string]string{}
		for _, turn := range s.Turns {
			number[turn.Operation] = turn.Number
		}
		for _, turn := range is.Students[m].Turns {
			if turn.Number != number[turn.Operation] {
				t.Errorf("%s: %s was number %s and is %s", s.Name, turn.Operation, number[turn.Operation], turn.Number)
			}
		}
	}
	if !slices.ContainsFunc(is.Numbers, func(n process.ClassNumber) bool { return strings.HasSuffix(n.Number, "a") }) {
		t.Error("the newcomer's French seams have no numbers with a letter")
	}
	again := taught(t, after)
	if diff := cmp.Diff(is, again); diff != "" {
		t.Errorf("the same file gave another class:\n%s", diff)
	}
}

func TestNumbersThatCannotStay(t *testing.T) {
	text := classFor("shell-top", "cotton-poplin") + "numbers: {\"1\": side.stitch.1, \"2\": side.pin.1}\n"
	_, err := process.Teach(t.Context(), classOf(t, text), order.Options{})
	r, ok := errors.AsType[*process.RenumberError](err)
	if !ok || r.First != "2" || r.Then != "1" || r.Student != "S0" || len(r.Why) == 0 {
		t.Errorf("error %v", err)
	}
}

// TestHomeworkWhereTimeIsShort: work that can be done at home is given out only
// where the sessions do not hold all.
func TestHomeworkWhereTimeIsShort(t *testing.T) {
	long := classFor("shell-top", "cotton-poplin")
	short := strings.Replace(long, "count: 12, length: 3 h", "count: 1, length: 95 min", 1)
	home := strings.Replace(short, "  - name: S0\n", "  - name: S0\n    at_home: [straight-stitcher, overlocker-3, iron]\n", 1)
	for _, x := range taught(t, long).Sessions {
		if len(x.Homework) > 0 {
			t.Errorf("homework %v though the sessions hold all", x.Homework)
		}
	}
	p := taught(t, home)
	if len(p.Sessions) != 1 || len(p.Sessions[0].Homework) == 0 {
		t.Errorf("%d sessions, homework %v", len(p.Sessions), p.Sessions[0].Homework)
	}
	lawsOfTheClass(t, p)
	without := taught(t, short)
	if len(without.Sessions) < 2 || !without.Sessions[1].Extra {
		t.Errorf("without machines at home: %d sessions", len(without.Sessions))
	}
}

func TestWrongClasses(t *testing.T) {
	good := classFor("shell-top", "cotton-poplin", "cotton-lawn")
	for _, tt := range []struct{ from, to, want string }{
		{"name: S1", "name: S0", `two students are called "S0"`},
		{"length: 3 h", "length: three hours", `cannot read "three hours" as a length of time`},
		{"length: 3 h", "length: 25 min", "setting up and clearing leave 5 minutes for work"},
		{"count: 12, ", "count: 0, ", "0 sessions"},
		{"name: S0", "name: S0\n    at_home: [overlokker]", `for S0: no machine "overlokker" on the shelf`},
		{"is: cotton-poplin", "is: cotton-poplinn", `no cloth "cotton-poplinn"`},
		{"is: straight-stitcher, count: 2", "is: straight-sticher, count: 2", `no machine "straight-sticher" on the shelf`},
		{"length: 3 h", "length: 3 h, dates: [Monday]", "1 dates for 12 sessions"},
		{"length: 3 h", "length: 40 min, setting_up: 10 min, clearing: 20 min", ""},
	} {
		text := strings.Replace(good, tt.from, tt.to, 1)
		c, err := process.ParseClass("class.yaml", []byte(text))
		if err == nil {
			in := classOf(t, good)
			in.Class = c
			_, err = process.Teach(t.Context(), in, order.Options{})
		}
		if tt.want == "" {
			var tooLong *process.CannotError
			if err != nil && !errors.As(err, &tooLong) {
				t.Errorf("%s: %v", tt.to, err)
			}
			continue
		}
		if err == nil || !strings.Contains(err.Error(), tt.want) {
			t.Errorf("%s: error %v, want %q", tt.to, err, tt.want)
		}
		if f, ok := errors.AsType[form.Faults](err); !ok || f[0].Line == 0 {
			t.Errorf("%s: no place in %v", tt.to, err)
		}
	}
}

// TestSessionsTooShort names the numbers that no session holds.
func TestSessionsTooShort(t *testing.T) {
	text := strings.Replace(classFor("shell-top", "cotton-poplin"), "length: 3 h", "length: 30 min", 1)
	text = strings.Replace(text, "  - name: S0\n", "  - name: S0\n    pace: 5\n", 1)
	_, err := process.Teach(t.Context(), classOf(t, text), order.Options{})
	c, ok := errors.AsType[*process.CannotError](err)
	if !ok || !strings.Contains(c.Why[0], "without a rest") || !strings.Contains(c.Why[0], "S0") {
		t.Errorf("error %v", err)
	}
}

// BenchmarkTeach works out a class of twenty, every student in her own size and
// colour, some in another cloth.
func BenchmarkTeach(b *testing.B) {
	text := classFor("shell-top", slices.Repeat([]string{"cotton-poplin", "cotton-lawn", "silk-georgette", "linen-medium"}, 5)...)
	for k := range 20 {
		text = strings.Replace(text, fmt.Sprintf("name: S%d\n", k), fmt.Sprintf("name: S%d\n    size: {bust: %d cm}\n", k, 84+2*k), 1)
	}
	in := classOf(b, text)
	for b.Loop() {
		if _, err := process.Teach(context.Background(), in, order.Options{}); err != nil {
			b.Fatal(err)
		}
	}
}
