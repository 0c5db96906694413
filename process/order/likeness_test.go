package order_test

import (
	"math"
	"testing"

	"bodkin/process"
	"bodkin/process/order"
	"bodkin/seams"
	"bodkin/seams/form"
	"bodkin/templates"
)

// A likeness is what one piece of work is like, as far as its order minds.
type likeness struct {
	perSeam    float64 // operations of a seam
	stations   map[string]float64
	turns      float64 // share of the arrows within a seam that lead to another station
	arrows     float64 // to each operation, those that follow from others left out
	across     float64 // to each seam from others, counted alike
	comparable float64 // share of the pairs of operations whose order is given
	main       float64 // share of the sewing by machine in the colour used most
}

// liken measures work from its operations: station, seam and colour of each,
// and what comes directly before it as far as told.
func liken(station []string, seam, colour []int, after [][]int) likeness {
	n := len(station)
	l := likeness{stations: map[string]float64{}}
	below := make([][]bool, n)
	var close func(i int) []bool
	close = func(i int) []bool {
		if below[i] == nil {
			below[i] = make([]bool, n)
			for _, b := range after[i] {
				below[i][b] = true
				for c, is := range close(b) {
					below[i][c] = below[i][c] || is
				}
			}
		}
		return below[i]
	}
	seams, colours := map[int]bool{}, map[int]float64{}
	var pairs, arrows, within, turns, across, sewn float64
	for i := range n {
		seams[seam[i]] = true
		l.stations[station[i]] += 1 / float64(n)
		if station[i] == "machine" || station[i] == "overlocker" {
			colours[colour[i]]++
			sewn++
		}
		covered := make([]bool, n)
		for _, b := range after[i] {
			for c, is := range close(b) {
				covered[c] = covered[c] || is
			}
		}
		for b, is := range close(i) {
			if !is {
				continue
			}
			pairs++
			direct := !covered[b]
			switch {
			case !direct:
			case seam[b] != seam[i]:
				arrows++
				across++
			default:
				arrows++
				within++
				if station[b] != station[i] {
					turns++
				}
			}
		}
	}
	for _, k := range colours {
		l.main = max(l.main, k/sewn)
	}
	s := float64(len(seams))
	l.perSeam, l.turns = float64(n)/s, turns/within
	l.arrows, l.across = arrows/float64(n), across/s
	l.comparable = 2 * pairs / float64(n*(n-1))
	return l
}

// mean is the likeness of the middling piece of work.
func mean(ls []likeness) likeness {
	m := likeness{stations: map[string]float64{}}
	k := 1 / float64(len(ls))
	for _, l := range ls {
		m.perSeam += k * l.perSeam
		m.turns += k * l.turns
		m.arrows += k * l.arrows
		m.across += k * l.across
		m.comparable += k * l.comparable
		m.main += k * l.main
		for s, share := range l.stations {
			m.stations[s] += k * share
		}
	}
	return m
}

// shelfLikeness plans every garment of the shelf in the cloths by turns, with a
// machine, an overlocker and a steam iron.
func shelfLikeness(t *testing.T, sewing, overlocking string, cloths ...string) likeness {
	shelf, err := seams.Load()
	if err != nil {
		t.Fatal(err)
	}
	text := func(s string) form.Text { return form.Text{Value: s} }
	room := &process.Workroom{Name: "five stations", Iron: text("steam"), Machines: []process.RoomMachine{
		{Is: text(sewing)}, {Is: text(overlocking)}}}
	kinds := map[string]string{sewing: "machine", overlocking: "overlocker"}
	var ls []likeness
	for k, name := range templates.Names() {
		g, err := templates.Load(name)
		if err != nil {
			t.Fatal(err)
		}
		job := &process.Job{Make: text(name)}
		for i, r := range g.Roles() {
			c := process.JobCloth{Is: text("cotton-lawn"), Colour: "dusk blue", Width: 1400}
			if i == 0 {
				c = process.JobCloth{Is: text(cloths[k%len(cloths)]), Colour: "reed green", Width: 1400}
			}
			job.Cloth = append(job.Cloth, form.Pair[process.JobCloth]{Key: text(r.Name), Value: c})
		}
		p, err := process.Work(t.Context(), process.Input{Job: job, Garment: g, Workroom: room, Shelf: shelf}, order.Options{Nodes: order.NoSearch})
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		n := len(p.Operations)
		station, seam, colour, after := make([]string, n), make([]int, n), make([]int, n), make([][]int, n)
		at, seams, colours := map[string]int{}, map[string]int{}, map[string]int{}
		number := func(m map[string]int, s string) int {
			if _, ok := m[s]; !ok {
				m[s] = len(m)
			}
			return m[s]
		}
		for i, op := range p.Operations {
			at[op.ID] = i
			station[i] = op.Station
			if kind := kinds[op.Station]; kind != "" {
				station[i] = kind
			}
			seam[i], colour[i] = number(seams, op.Seam), number(colours, op.Setting.Thread)
		}
		for i, op := range p.Operations {
			for _, a := range op.After {
				after[i] = append(after[i], at[a.ID])
			}
		}
		ls = append(ls, liken(station, seam, colour, after))
	}
	return mean(ls)
}

// The generated garments are like those of the shelf in what makes an order
// hard to find, each figure within the tolerance beside it, which is a judgement.
// The generator was fitted to the first sample of the shelf's plans, in lawn and
// denim; the second, in other cloths and with other machines, was not looked at for
// that. Fewer arrows come from other seams than on the shelf, which leaves more
// orders open, and more rows are in a second colour. What settings cost is not
// compared: the generator's costs are invented.
func TestGarmentsAreLikeTheShelf(t *testing.T) {
	for _, sample := range []struct {
		name string
		real likeness
	}{
		{"fitted to", shelfLikeness(t, "straight-stitcher", "overlocker-3", "cotton-lawn", "denim")},
		{"held out", shelfLikeness(t, "zigzag-machine", "overlocker-4", "quilting-cotton", "linen-medium", "wool-suiting")},
	} {
		t.Run(sample.name, func(t *testing.T) { likeGarments(t, sample.real) })
	}
}

func likeGarments(t *testing.T, real likeness) {
	names := []string{table: "table", machine: "machine", overlocker: "overlocker", iron: "iron", hand: "hand"}
	for _, n := range []int{150} {
		var ls []likeness
		for seed := range uint64(20) {
			p := fitted(seed+1, n)
			station, seam, colour, after := make([]string, n), make([]int, n), make([]int, n), make([][]int, n)
			for i, op := range p.Operations {
				station[i], seam[i], after[i] = names[op.Station], op.Group, op.After
				if op.Station == machine || op.Station == overlocker {
					colour[i] = op.Setting[0]
				}
			}
			ls = append(ls, liken(station, seam, colour, after))
		}
		got := mean(ls)
		near := func(what string, got, want, tolerance float64) {
			t.Helper()
			t.Logf("%d operations, %s: %.2f, on the shelf %.2f", n, what, got, want)
			if math.Abs(got-want) > tolerance {
				t.Errorf("%d operations, %s: %.2f, on the shelf %.2f, more than %.2f apart", n, what, got, want, tolerance)
			}
		}
		near("operations per seam", got.perSeam, real.perSeam, 0.7)
		near("turns to another station", got.turns, real.turns, 0.1)
		near("arrows per operation", got.arrows, real.arrows, 0.1)
		near("arrows per seam from others", got.across, real.across, 0.5)
		near("comparable pairs", got.comparable, real.comparable, 0.1)
		near("sewing in the main colour", got.main, real.main, 0.15)
		for _, s := range names {
			near("share of "+s, got.stations[s], real.stations[s], 0.06)
		}
	}
}
