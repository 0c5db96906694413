package seams_test

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"testing"

	"bodkin/seams"
)

// No choice hangs on the order of the data files: with the entries of each kind
// shuffled, every kind of work is judged the same, reason by reason, every cloth
// is steadied, taped and likened the same, and the same cautions are called for.
// The tables of needles, threads and pressing are left as they stand, since
// there the order is what is said: the first rule that holds is taken.
func TestChoicesDoNotHangOnTheOrderOfEntries(t *testing.T) {
	s := load(t)
	want := choices(t, s)
	if len(want) < 1000 {
		t.Errorf("only %d choices are compared", len(want))
	}
	for seed := range uint64(3) {
		r := rand.New(rand.NewPCG(seed, 7))
		other := *s
		other.Cloths, other.Constructions, other.Interfacings = shuffled(r, s.Cloths), shuffled(r, s.Constructions), shuffled(r, s.Interfacings)
		other.Stitches, other.Tools, other.Acts, other.Cautions = shuffled(r, s.Stitches), shuffled(r, s.Tools), shuffled(r, s.Acts), shuffled(r, s.Cautions)
		for key, got := range choices(t, &other) {
			if got != want[key] {
				t.Errorf("shuffled with seed %d, %s:\n%s\nwant\n%s", seed, key, got, want[key])
			}
		}
		// Which machines are named as a help goes by their order; what is chosen does not.
		other = *s
		other.Machines = shuffled(r, s.Machines)
		facts := seams.Facts{Cloth: clothFacts(t, s, "cotton-poplin"), Workroom: roomOf(t, "zigzag machine").facts(&other, "", nil)}
		facts.Applied = facts.Cloth
		for _, n := range needs() {
			facts.Join, facts.Edge = n.shapes[0].line, n.shapes[0].line
			if got, want := chosen(t, &other, n, facts), chosen(t, s, n, facts); got != want {
				t.Errorf("machines shuffled with seed %d: %s for %s, want %s", seed, got, n.kind, want)
			}
		}
	}
}

func chosen(t *testing.T, s *seams.Shelf, n need, f seams.Facts) string {
	t.Helper()
	verdicts, err := s.Weigh(n.work, n.kind, f)
	if err != nil {
		t.Fatal(err)
	}
	return verdicts[0].Construction.Name
}

// choices are what the shelf says of a few cloths in two rooms, by what is asked.
func choices(t *testing.T, s *seams.Shelf) map[string]string {
	t.Helper()
	out := map[string]string{}
	for _, cloth := range s.Cloths {
		nearest, how := s.Resembles(cloth)
		out["like "+cloth.Name] = fmt.Sprint(nearest.Name, how)
		for _, r := range []string{"straight stitcher, no iron", "everything"} {
			f := seams.Facts{Cloth: cloth.Facts(), Applied: cloth.Facts(), Workroom: roomOf(t, r).facts(s, "", nil)}
			pieces, err := s.WeighInterfacings(f)
			if err != nil {
				t.Fatal(err)
			}
			tapes, err := s.WeighTapes(f)
			if err != nil {
				t.Fatal(err)
			}
			said := ""
			for _, v := range slices.Concat(pieces, tapes) {
				said += fmt.Sprintln(v.Interfacing.Name, v.RuledOut, v.Score, v.For)
			}
			out["steadied "+cloth.Name+" "+r] = said
			cautions, err := s.CautionsFor(f, []string{"press", "cut", "stitch"})
			if err != nil {
				t.Fatal(err)
			}
			var names []string
			for _, c := range cautions {
				names = append(names, c.Name)
			}
			slices.Sort(names) // they are told in the order of the shelf
			out["cautions "+cloth.Name+" "+r] = fmt.Sprint(names)
		}
	}
	for _, name := range standing()[:len(standing())-1] { // the last is not among ours
		for _, n := range needs() {
			f := seams.Facts{Cloth: clothFacts(t, s, name), Join: n.shapes[0].line, Edge: n.shapes[0].line}
			f.Applied, f.Workroom = f.Cloth, roomOf(t, "zigzag machine and overlocker").facts(s, "", nil)
			verdicts, err := s.Weigh(n.work, n.kind, f)
			if err != nil {
				t.Fatal(err)
			}
			for i, v := range verdicts {
				out[fmt.Sprint(n.work, " ", n.kind, " ", name, " ", i)] = fmt.Sprint(v.Construction.Name, v.RuledOut, v.Score, v.For, v.Against)
			}
		}
	}
	return out
}

func shuffled[T any](r *rand.Rand, list []T) []T {
	out := slices.Clone(list)
	r.Shuffle(len(out), func(i, k int) { out[i], out[k] = out[k], out[i] })
	return out
}
