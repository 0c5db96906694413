package process_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"bodkin/process"
	"bodkin/process/order"
	"bodkin/seams/form"
	"bodkin/templates"
)

// TestWishes: what a wish costs is told, and recounted here from the order alone:
// of region the parts taken up, of a pair whether it stands as wished. A wish that
// is worth much is kept where the garment lets it be; changes and wishes together
// cost no more than the order without wishes would.
func TestWishes(t *testing.T) {
	shelf := loadShelf(t)
	worked := func(garment string, wishes ...string) *process.Plan {
		g, err := templates.Load(garment)
		if err != nil {
			t.Fatal(err)
		}
		j := jobFor(g, "silk-georgette", "silk-satin")
		for k := 0; k < len(wishes); k += 2 {
			j.Wishes = append(j.Wishes, form.Pair[form.Text]{Key: text(wishes[k]), Value: text(wishes[k+1])})
		}
		return plan(t, j, roomOf("steam", "straight-stitcher"), shelf)
	}
	picking := func(garment, minutes string) *process.Plan {
		g, err := templates.Load(garment)
		if err != nil {
			t.Fatal(err)
		}
		w := roomOf("steam", "straight-stitcher")
		w.Minutes.Pick = text(minutes)
		return plan(t, jobFor(g, "silk-georgette", "silk-satin"), w, shelf)
	}
	takenUp := func(p *process.Plan) (times int) {
		last := ""
		for _, o := range p.Operations {
			if o.Seam != "" && o.Seam != last {
				if last != "" {
					times++
				}
				last = o.Seam
			}
		}
		return times
	}
	for _, garment := range []string{"shell-top", "open-jacket", "pull-on-skirt"} {
		free, region := worked(garment), worked(garment, "region", "1.5")
		checkOrder(t, region)
		w := region.Order.Wishes[0]
		if want := 1.5 * float64(takenUp(region)); math.Abs(w.Paid-want) > 0.01 || w.Kept {
			t.Errorf("%s: region costs %g, want %g", garment, w.Paid, want)
		}
		room := picking(garment, "1.5")
		checkOrder(t, room)
		if p := room.Order.Wishes[0]; p.Wish != "pick" || math.Abs(p.Paid-1.5*float64(takenUp(room))) > 0.01 || !room.Order.Proved ||
			math.Abs(room.Order.ChangeMinutes+p.Paid-region.Order.ChangeMinutes-w.Paid) > 0.01 {
			t.Errorf("%s: the room's minutes cost %+v with %g of changes, the wish %+v with %g", garment, p, room.Order.ChangeMinutes, w, region.Order.ChangeMinutes)
		}
		if takenUp(region) > takenUp(free) {
			t.Errorf("%s: parts are taken up %d times, %d without the wish", garment, takenUp(region), takenUp(free))
		}
		if whole, before := region.Order.ChangeMinutes+w.Paid, free.Order.ChangeMinutes+1.5*float64(takenUp(free)); region.Order.Proved && whole > before+1e-6 {
			t.Errorf("%s: %g minutes with the wish, the order without it %g", garment, whole, before)
		}
		if !region.Order.Proved || len(free.Order.Wishes) != 0 {
			t.Errorf("%s: proved %v, wishes of nobody %v", garment, region.Order.Proved, free.Order.Wishes)
		}
	}
	place := func(p *process.Plan, seam string) (first, last int) {
		first = slices.IndexFunc(p.Operations, func(o process.Operation) bool { return o.Seam == seam })
		for k, o := range p.Operations {
			if o.Seam == seam {
				last = k
			}
		}
		return first, last
	}
	for _, tt := range []struct{ first, then string }{{"neck", "side"}, {"hem", "neck"}, {"neck", "hem"}} {
		p := worked("shell-top", tt.first+" before "+tt.then, "60")
		_, last := place(p, tt.first)
		first, _ := place(p, tt.then)
		if kept := last < first; kept != p.Order.Wishes[0].Kept || !kept {
			t.Errorf("%s before %s, worth an hour: kept %v, told %+v", tt.first, tt.then, kept, p.Order.Wishes[0])
		}
	}
	all := worked("shirt-blouse", "small", "5", "delicate", "5", "fitting", "5")
	checkOrder(t, all)
	for _, w := range all.Order.Wishes {
		if w.Minutes != 5 || w.Paid < 0 || w.Paid > 5+0.5 || w.Kept != (w.Paid == 0) {
			t.Errorf("%+v", w)
		}
	}
}

func TestWrongWishes(t *testing.T) {
	for _, tt := range []struct{ wishes, want string }{
		{"wishes: {regoin: 1}", `job.yaml:2:10: no wish "regoin"`},
		{"wishes: {region: much}", `job.yaml:2:18: cannot read "much" as what a wish is worth`},
		{"wishes: {region: 0}", `cannot read "0" as what a wish is worth`},
		{"wishes: {nack before side: 1}", `has no seam, edge or operation "nack"`},
	} {
		j, err := process.ParseJob("job.yaml", []byte("make: shell-top\n"+tt.wishes+"\ncloth: {main: {is: cotton-lawn, colour: red}, binding: {is: cotton-lawn, colour: red}}\n"))
		if err != nil {
			t.Fatal(err)
		}
		g, err := templates.Load("shell-top")
		if err != nil {
			t.Fatal(err)
		}
		_, err = process.Work(t.Context(), process.Input{Job: j, Garment: g, Workroom: process.DefaultWorkroom(), Shelf: loadShelf(t)}, order.Options{})
		if err == nil || !strings.Contains(err.Error(), tt.want) {
			t.Errorf("%s: error %v, want %q", tt.wishes, err, tt.want)
		}
	}
}
