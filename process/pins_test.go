package process_test

import (
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"bodkin/process"
	"bodkin/process/order"
	"bodkin/seams"
	"bodkin/seams/form"
	"bodkin/templates"
)

func texts(words ...string) []form.Text {
	var out []form.Text
	for i, w := range words {
		out = append(out, form.Text{Value: w, At: form.Place{File: "job.yaml", Line: 10 + i, Column: 5}})
	}
	return out
}

// pinnedWork plans a garment in lawn with an order of the maker's own.
func pinnedWork(t *testing.T, shelf *seams.Shelf, orders, pins []form.Text) (*process.Plan, error) {
	t.Helper()
	g, err := templates.Load("shell-top")
	if err != nil {
		t.Fatal(err)
	}
	in := process.Input{Garment: g, Workroom: pinRoom(), Shelf: shelf, Job: jobFor(g, "cotton-lawn", "cotton-poplin")}
	in.Job.Order, in.Job.Pins = orders, pins
	return process.Work(t.Context(), in, order.Options{Nodes: 20_000})
}

func pinRoom() *process.Workroom { return roomOf("steam", "straight-stitcher", "overlocker-3") }

// firstOf and lastOf are where the work on a seam begins and ends in the plan,
// without its strip and its finishing after the seam that closes it.
func firstOf(p *process.Plan, seam string) int {
	return slices.IndexFunc(p.Operations, func(o process.Operation) bool {
		return o.Seam == seam && o.Does != "join-strip" && !strings.Contains(o.Text, "strip")
	})
}

func lastOf(p *process.Plan, seam string) int {
	last := -1
	for i, o := range p.Operations {
		if o.Seam == seam && !o.Closing {
			last = i
		}
	}
	return last
}

func TestOwnOrderIsKept(t *testing.T) {
	shelf := loadShelf(t)
	tests := []struct {
		about       string
		order, pins []form.Text
		before      [2]string // the first is done before the second is begun
		refused     string    // words of the refusal
	}{
		{about: "pin", pins: texts("side before neck"), before: [2]string{"side", "neck"}},
		{about: "pin by titles, the other way round", pins: texts("the armhole edge after the neck edge"), before: [2]string{"neck", "armhole"}},
		{about: "fitting after the sides, as it is anyway", pins: texts("fit after side seam"), before: [2]string{"side", "hem"}},
		{about: "order", order: texts("bust-dart", "side", "shoulder", "hem"), before: [2]string{"side", "shoulder"}},
		{about: "order that the garment refuses in part", order: texts("neck", "shoulder", "side"),
			before: [2]string{"shoulder", "side"}, refused: "runs over the end of the shoulder seam"},
	}
	for _, tt := range tests {
		t.Run(tt.about, func(t *testing.T) {
			p, err := pinnedWork(t, shelf, tt.order, tt.pins)
			if err != nil {
				t.Fatal(err)
			}
			checkOrder(t, p)
			checkCost(t, p, pinRoom(), shelf)
			if a, b := lastOf(p, tt.before[0]), firstOf(p, tt.before[1]); a < 0 || b < 0 || a > b {
				t.Errorf("%s ends at %d, %s begins at %d", tt.before[0], a, tt.before[1], b)
			}
			own := p.Order.Own
			if own.FreeProved && own.FreeMinutes > p.Order.ChangeMinutes+1e-9 {
				t.Errorf("free it takes %.2f minutes, in her order %.2f", own.FreeMinutes, p.Order.ChangeMinutes)
			}
			var why []string
			for _, r := range own.Refused {
				for _, b := range r.Because {
					why = append(why, b.Because)
				}
			}
			if got := strings.Join(why, "; "); (got == "") != (tt.refused == "") || !strings.Contains(got, tt.refused) {
				t.Errorf("refused because %q, want %q", got, tt.refused)
			}
		})
	}
}

func TestOwnOrderFaults(t *testing.T) {
	shelf := loadShelf(t)
	tests := []struct {
		about       string
		order, pins []form.Text
		want        []string // in the message
	}{
		{"unknown name", nil, texts("nekc before side"), []string{"job.yaml:10:5", `"nekc"`, `did you mean "neck"`}},
		{"unknown name in the order", texts("side", "sholder"), nil, []string{"job.yaml:11:5", `"sholder"`, `did you mean "shoulder"`}},
		{"no sentence", nil, texts("neck, side"), []string{"job.yaml:10:5", "cannot read the pin", "shoulder before neck"}},
		{"before itself", nil, texts("neck before the neck edge"), []string{"before itself"}},
		{"two that contradict", nil, texts("side before shoulder", "shoulder before side"),
			[]string{"job.yaml:11:5", "“side before shoulder”", "let one of them go"}},
		{"three in a circle", nil, texts("side before hem", "hem before neck", "neck before side"), []string{"job.yaml:12:5", "“hem before neck”", "runs over the end of the side seam"}},
		{"against the garment", nil, texts("neck before shoulder"), []string{"job.yaml:10:5", "runs over the end of the shoulder seam"}},
		{"twice", texts("side", "side"), nil, []string{"job.yaml:11:5", "stands twice"}},
	}
	for _, tt := range tests {
		_, err := pinnedWork(t, shelf, tt.order, tt.pins)
		if _, ok := err.(form.Faults); !ok {
			t.Errorf("%s: %v is not a fault", tt.about, err)
			continue
		}
		for _, w := range tt.want {
			if !strings.Contains(err.Error(), w) {
				t.Errorf("%s: %q does not say %q", tt.about, err, w)
			}
		}
	}
}

// Any order of seams is kept where it is not refused: each pair either stands in
// the order that was asked for, or is told with a reason.
func TestAnyOrderIsKeptOrTold(t *testing.T) {
	g, err := templates.Load("shell-top")
	if err != nil {
		t.Fatal(err)
	}
	shelf := loadShelf(t)
	names := []string{"bust-dart", "shoulder", "side", "neck", "armhole", "hem"}
	rapid.Check(t, func(rt *rapid.T) {
		asked := rapid.Permutation(names).Draw(rt, "order")[:rapid.IntRange(2, len(names)).Draw(rt, "named")]
		j := jobFor(g, "cotton-lawn", "cotton-poplin")
		j.Order = texts(asked...)
		in := process.Input{Job: j, Garment: g, Workroom: rooms()[0], Shelf: shelf}
		p, err := process.Work(t.Context(), in, order.Options{Nodes: order.NoSearch})
		if err != nil {
			rt.Fatal(err)
		}
		for k, then := range asked {
			for _, first := range asked[:k] {
				told := slices.ContainsFunc(p.Order.Own.Refused, func(r process.Refused) bool {
					return r.First == first && r.Then == then && len(r.Because) > 0
				})
				if kept := lastOf(p, first) < firstOf(p, then); kept == told {
					rt.Errorf("%v: %s before %s: kept %v, refused %v", asked, first, then, kept, told)
				}
			}
		}
	})
}
