package process_test

import (
	"bytes"
	"encoding/json"
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"bodkin/process"
	"bodkin/process/order"
	"bodkin/seams"
	"bodkin/seams/form"
	"bodkin/templates"
)

func loadShelf(t testing.TB) *seams.Shelf {
	t.Helper()
	shelf, err := seams.Load()
	if err != nil {
		t.Fatal(err)
	}
	return shelf
}

func text(s string) form.Text { return form.Text{Value: s} }

// jobFor is a plain job for a garment in one cloth, with a second cloth in every
// other role.
func jobFor(g *templates.Garment, main, other string) *process.Job {
	j := &process.Job{Make: text(g.Name)}
	for i, r := range g.Roles() {
		c := process.JobCloth{Is: text(other), Colour: "dusk blue", Width: 1400}
		if i == 0 {
			c = process.JobCloth{Is: text(main), Colour: "reed green", Width: 1140}
		}
		j.Cloth = append(j.Cloth, form.Pair[process.JobCloth]{Key: text(r.Name), Value: c})
	}
	return j
}

func roomOf(iron string, machines ...string) *process.Workroom {
	w := &process.Workroom{Name: strings.Join(machines, " and "), Iron: text(iron)}
	for _, m := range machines {
		w.Machines = append(w.Machines, process.RoomMachine{Is: text(m)})
	}
	return w
}

func rooms() []*process.Workroom {
	return []*process.Workroom{
		roomOf("steam", "straight-stitcher"),
		roomOf("dry"),
		roomOf("steam", "zigzag-machine"),
		roomOf("steam", "straight-stitcher", "overlocker-3"),
		roomOf("steam", "zigzag-machine", "overlocker-4", "coverstitch"),
		roomOf("none", "straight-stitcher"),
	}
}

func plan(t testing.TB, j *process.Job, w *process.Workroom, shelf *seams.Shelf) *process.Plan {
	t.Helper()
	g, err := templates.Load(j.Make.Value)
	if err != nil {
		t.Fatal(err)
	}
	p, err := process.Work(t.Context(), process.Input{Job: j, Garment: g, Workroom: w, Shelf: shelf}, order.Options{Nodes: 200_000})
	if err != nil {
		t.Fatalf("%s in %s: %v", j.Make.Value, w.Name, err)
	}
	return p
}

// Every garment in cloths from sheer to heavy and knit: the laws of a plan hold,
// looked at by code that shares nothing with the planner. Each garment meets
// every cloth and every room, and each cloth meets every room in some garment;
// not every garment meets each cloth in each room.
func TestLawsOfThePlan(t *testing.T) {
	shelf := loadShelf(t)
	cloths := []string{"silk-georgette", "cotton-lawn", "quilting-cotton", "linen-medium", "denim", "velvet", "wool-flannel", "cotton-jersey", "swimwear-knit"}
	met := map[string]bool{}
	for at, name := range templates.Names() {
		g, err := templates.Load(name)
		if err != nil {
			t.Fatal(err)
		}
		for k, cloth := range cloths {
			w := rooms()[(k+at)%len(rooms())]
			met[cloth+" in "+w.Name], met[name+" in "+w.Name] = true, true
			t.Run(fmt.Sprintf("%s/%s/%s", name, cloth, strings.ReplaceAll(w.Name, " ", "-")), func(t *testing.T) {
				t.Parallel()
				j := jobFor(g, cloth, "cotton-lawn")
				p, err := process.Work(t.Context(), process.Input{Job: j, Garment: g, Workroom: w, Shelf: shelf}, order.Options{Nodes: 200_000})
				if err != nil {
					t.Fatal(err)
				}
				checkOrder(t, p)
				checkCost(t, p, w, shelf)
				checkSeams(t, p, shelf)
				checkWords(t, p)
			})
		}
	}
	for _, w := range rooms() {
		for _, what := range append(templates.Names(), cloths...) {
			if !met[what+" in "+w.Name] {
				t.Errorf("%s is never met in %s", what, w.Name)
			}
		}
	}
}

func checkOrder(t *testing.T, p *process.Plan) {
	t.Helper()
	done := map[string]bool{}
	for _, o := range p.Operations {
		for _, a := range o.After {
			if !done[a.ID] {
				t.Errorf("%s comes before %s, though %s", o.ID, a.ID, a.Because)
			}
			if a.Because == "" {
				t.Errorf("%s waits for %s without a reason", o.ID, a.ID)
			}
		}
		if done[o.ID] {
			t.Errorf("%s stands twice", o.ID)
		}
		done[o.ID] = true
	}
	var told []string
	for i, s := range p.Steps {
		if s.Number != i+1 {
			t.Errorf("step %d is numbered %d", i+1, s.Number)
		}
		told = append(told, s.Operations...)
	}
	var want []string
	for _, o := range p.Operations {
		want = append(want, o.ID)
	}
	if !slices.Equal(told, want) {
		t.Errorf("the steps do not tell the operations once each, in order")
	}
	for _, c := range p.Checks {
		if c.AfterStep < 1 || c.AfterStep > len(p.Steps) || !slices.Contains(p.Steps[c.AfterStep-1].Operations, c.AfterOperation) {
			t.Errorf("check %q stands after step %d, which does not hold %s", c.What, c.AfterStep, c.AfterOperation)
		}
	}
	if p.Order.BoundMinutes > p.Order.ChangeMinutes+1e-9 || p.Order.Proved && p.Order.BoundMinutes != p.Order.ChangeMinutes {
		t.Errorf("bound %v, cost %v, proved %v", p.Order.BoundMinutes, p.Order.ChangeMinutes, p.Order.Proved)
	}
	if p.Order.ChangeMinutes > p.Order.SeamBySeamMinutes+1e-9 {
		t.Errorf("the order costs %.2f minutes, seam by seam only %.2f", p.Order.ChangeMinutes, p.Order.SeamBySeamMinutes)
	}
}

// checkCost replays the operations on machines that remember their settings and
// adds up what the changes take.
func checkCost(t *testing.T, p *process.Plan, w *process.Workroom, shelf *seams.Shelf) {
	t.Helper()
	kind := map[string]process.Station{}
	for _, s := range p.Stations {
		kind[s.Name] = s
	}
	minutes, at := 0.0, ""
	threads, moves, rethreaded := 0, 0, ""
	held := heldAtFirst(p, w)
	if p.Begun != nil {
		at = p.Begun.At
	}
	seconds := func(m float64) float64 { return math.Round(m*60) / 60 }
	for _, o := range p.Operations {
		st, ok := kind[o.Station]
		if !ok {
			t.Fatalf("%s is done at %q, which is not among the stations", o.ID, o.Station)
		}
		tableAndHand := func(s string) bool { return s == "table" || s == "hand" }
		if at != "" && at != o.Station && !(tableAndHand(at) && tableAndHand(o.Station)) {
			minutes += 0.25
			moves++
		}
		at = o.Station
		if st.Machine == "" {
			continue
		}
		m, err := shelf.Machine(st.Machine)
		if err != nil {
			t.Fatal(err)
		}
		set := func(what, value string, cost, first float64) {
			key := o.Station + " " + what
			switch old, ok := held[key]; {
			case value == "" || ok && old == value:
				return
			case ok:
				minutes += seconds(cost)
				if strings.Contains("thread bobbin loopers", what) && rethreaded != o.ID {
					threads, rethreaded = threads+1, o.ID // all at once is one change of thread
				}
			default:
				minutes += seconds(first)
			}
			held[key] = value
		}
		switch st.Kind {
		case "machine":
			set("thread", o.Setting.Thread, m.Minutes.Thread, m.Minutes.Thread)
			set("bobbin", o.Setting.Bobbin, m.Minutes.Bobbin, m.Minutes.Bobbin)
			set("loopers", o.Setting.Loopers, m.Minutes.Loopers, m.Minutes.Loopers)
			set("needle", o.Setting.Needle, m.Minutes.Needle, m.Minutes.Needle)
			set("foot", o.Setting.Foot, m.Minutes.Foot, 0)
			if o.Setting.Stitch != "" {
				set("stitch", fmt.Sprintf("%s at %.1f", o.Setting.Stitch, o.Setting.StitchMM), m.Minutes.Stitch, 0)
			}
		case "hand":
			set("thread", o.Setting.Thread, m.Minutes.Thread, m.Minutes.Thread)
		case "iron":
			if d := o.Setting.HeatDots; d > 0 {
				old := 0
				if h, ok := held[o.Station+" heat"]; ok {
					fmt.Sscan(h, &old)
				}
				if d > old {
					minutes += seconds(m.Minutes.Hotter * float64(d-old))
				} else {
					minutes += seconds(m.Minutes.Cooler * float64(old-d))
				}
				held[o.Station+" heat"] = fmt.Sprint(d)
			}
		}
	}
	if math.Abs(minutes-p.Order.ChangeMinutes) > 1e-6 {
		t.Errorf("replayed, the changes take %.4f minutes; the plan says %.4f", minutes, p.Order.ChangeMinutes)
	}
	told := 0.0
	for _, c := range p.Changes {
		told += c.Minutes
	}
	if math.Abs(told-minutes) > 1e-6 {
		t.Errorf("the changes that are told take %.4f minutes, replayed %.4f", told, minutes)
	}
	if threads != p.Totals.ThreadChanges {
		t.Errorf("replayed, the thread is changed %d times; the plan says %d", threads, p.Totals.ThreadChanges)
	}
	if moves != p.Totals.StationMoves {
		t.Errorf("replayed, one moves %d times; the plan says %d", moves, p.Totals.StationMoves)
	}
}

// heldAtFirst is what the machines hold before the first operation: what the
// workroom says, and where work is resumed, what the done part left.
func heldAtFirst(p *process.Plan, w *process.Workroom) map[string]string {
	held, of := map[string]string{}, map[string]int{}
	for _, m := range w.Machines {
		name := m.Is.Value
		if of[name]++; of[name] > 1 {
			name += fmt.Sprintf("-%d", of[name])
		}
		if m.Threaded != "" {
			held[name+" thread"], held[name+" bobbin"], held[name+" loopers"] = m.Threaded, m.Threaded, m.Threaded
		}
		if m.Foot.Value != "" {
			held[name+" foot"] = m.Foot.Value
		}
	}
	if p.Begun == nil {
		return held
	}
	for station, s := range p.Begun.Held {
		for what, value := range map[string]string{"thread": s.Thread, "bobbin": s.Bobbin, "loopers": s.Loopers, "needle": s.Needle, "foot": s.Foot} {
			if value != "" {
				held[station+" "+what] = value
			}
		}
		if s.Stitch != "" {
			held[station+" stitch"] = fmt.Sprintf("%s at %.1f", s.Stitch, s.StitchMM)
		}
		if s.HeatDots > 0 {
			held[station+" heat"] = fmt.Sprint(s.HeatDots)
		}
	}
	return held
}

func checkSeams(t *testing.T, p *process.Plan, shelf *seams.Shelf) {
	t.Helper()
	byName := map[string]process.Seam{}
	for _, s := range p.Seams {
		byName[s.Name] = s
		size := map[string]float64{}
		for _, z := range s.Sizes {
			size[z.Name] = z.MM
		}
		if s.Construction == "french" {
			if sum := size["first"] + size["second"] + size["turn"]; math.Abs(sum-s.Allowance) > 0.01 {
				t.Errorf("%s: first and second stitching and the turn make %.2f mm, the allowance is %.2f", s.Title, sum, s.Allowance)
			}
			if size["trim"] >= size["second"] {
				t.Errorf("%s: trimmed to %.1f mm, second stitching %.1f", s.Title, size["trim"], size["second"])
			}
			// A French seam finishes no wider than 1/4 in: common practice, no source.
			if s.Finished > 6.35+1e-9 {
				t.Errorf("%s finishes %.1f mm wide", s.Title, s.Finished)
			}
		}
		if len(s.Because) == 0 && len(s.Rejected) > 0 && !slices.ContainsFunc(s.Rejected, func(r process.Rejected) bool { return r.RuledOut }) {
			t.Errorf("%s is a %s for no reason", s.Title, s.ConstructionTitle)
		}
		for _, r := range s.Rejected {
			if len(r.Because) == 0 {
				t.Errorf("%s: no word on why it is not a %s", s.Title, r.Title)
			}
		}
	}
	for _, piece := range p.Pieces {
		for _, e := range piece.Edges {
			if e.Seam == "fold" {
				continue
			}
			s, ok := byName[e.Seam]
			if !ok {
				t.Errorf("%s, %s: belongs to %q, which is no seam of the plan", piece.Title, e.Name, e.Seam)
			}
			// The outer edge of a facing is neatened as it is cut, away from the seam.
			if s.Kind == "facing" && e.Allowance == 0 && strings.Contains(e.Name, "outer") {
				continue
			}
			if s.Kind != "dart" && math.Abs(e.Allowance-e.Spare-s.Allowance) > 1e-9 && math.Abs(e.Allowance-e.Spare-s.AllowanceB) > 1e-9 {
				t.Errorf("%s, %s: cut with %.2f mm, the %s wants %.2f or %.2f", piece.Title, e.Name, e.Allowance, s.Title, s.Allowance, s.AllowanceB)
			}
		}
		// A curve that is cut on its own line is followed by short straight ones.
		const flattened = 0.05 // mm
		if piece.Width < piece.NetWidth-flattened || piece.Height < piece.NetHeight-flattened {
			t.Errorf("%s is cut smaller than its seam lines, %v by %v against %v by %v", piece.Title, piece.Width, piece.Height, piece.NetWidth, piece.NetHeight)
		}
	}
	for _, o := range p.Operations {
		for _, f := range p.Interfacing {
			if o.Does == "fuse" && strings.HasPrefix(f.Name, o.Seam+"-") && o.Setting.HeatDots > f.HeatDots {
				t.Errorf("%s is fused at %d dots, the glue wants %d", o.ID, o.Setting.HeatDots, f.HeatDots)
			}
		}
	}
	limit := 3
	for _, c := range p.Cloths {
		limit = min(limit, c.HeatDots)
	}
	for _, o := range p.Operations {
		if o.Setting.HeatDots > 3 || o.Setting.HeatDots > 0 && len(p.Cloths) == 1 && o.Setting.HeatDots > limit {
			t.Errorf("%s is pressed at %d dots, the cloth takes %d", o.ID, o.Setting.HeatDots, limit)
		}
		if o.Setting.Stitch != "" {
			if _, err := shelf.Stitch(o.Setting.Stitch); err != nil {
				t.Error(err)
			}
			if o.Setting.Thread == "" {
				t.Errorf("%s has no thread", o.ID)
			}
		}
		if o.Minutes <= 0 || o.Basis == "" {
			t.Errorf("%s takes %.2f minutes on the basis of %q", o.ID, o.Minutes, o.Basis)
		}
	}
	for _, th := range p.Thread {
		if th.Metres <= 0 || math.Abs(th.NeedleM+th.LooperM-th.Metres) > 0.11 {
			t.Errorf("%s thread: %.1f m and %.1f m make %.1f m", th.Colour, th.NeedleM, th.LooperM, th.Metres)
		}
	}
}

func checkWords(t *testing.T, p *process.Plan) {
	t.Helper()
	for _, o := range p.Operations {
		if o.Text == "" || strings.ContainsAny(o.Text+o.Good, "{}") {
			t.Errorf("%s: words %q, %q", o.ID, o.Text, o.Good)
		}
	}
	for _, s := range p.Steps {
		if s.Title == "" {
			t.Errorf("step %d has no title", s.Number)
		}
	}
	data, err := json.Marshal(p)
	if err != nil {
		t.Fatal(err)
	}
	if bytes.Contains(data, []byte("null")) {
		t.Error("the JSON holds a null")
	}
}

// The same job twice gives the same plan to the byte.
func TestSamePlanTwice(t *testing.T) {
	shelf := loadShelf(t)
	for _, name := range templates.Names() {
		g, err := templates.Load(name)
		if err != nil {
			t.Fatal(err)
		}
		a, _ := json.Marshal(plan(t, jobFor(g, "silk-georgette", "silk-satin"), rooms()[0], shelf))
		b, _ := json.Marshal(plan(t, jobFor(g, "silk-georgette", "silk-satin"), rooms()[0], loadShelf(t)))
		if !bytes.Equal(a, b) {
			t.Errorf("%s: two plans differ", name)
		}
	}
}
