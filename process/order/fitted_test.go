package order_test

import (
	"math/rand/v2"

	"bodkin/process/order"
)

// A chain is the stations of a seam's passes, one letter each, and how many
// seams of the shelf's plans have it.
type chain struct {
	passes string // t table, m machine, z machine with its second foot, o overlocker, i iron, h hand
	seams  int
}

// chains are those, longer than a staystitch, that four or more seams have of 22 garments planned in lawn
// and in denim for a room with a straight stitcher, an overlocker and a steam
// iron.
var chains = []chain{
	{"tmoi", 93}, {"iitmi", 36}, {"htoihi", 19}, {"ttmti", 16}, {"ttmtti", 16},
	{"htmthh", 14}, {"thth", 12}, {"tmoti", 12}, {"iitttmtitmttimi", 10}, {"itmmtmtitmi", 10},
	{"tmttitm", 10}, {"iittmttttmtm", 8}, {"thh", 7}, {"thhh", 7}, {"hithzti", 6},
	{"miotmtttmtih", 6}, {"tithztthztzthi", 6}, {"tmmtti", 6}, {"htmoi", 5}, {"htohtihi", 5},
	{"iiitmmi", 4}, {"itmtittmi", 4}, {"mtttimitmtttimtitm", 4}, {"timitmi", 4}, {"tthim", 4},
}

// fitted generates garments in the image of the shelf's, of n operations in
// all: one garment up to 150, and above that as many alike in kind, none
// larger, that are made in one sitting at the same stations. Measured on 44
// plans of 22 garments, 26 to 116 operations each, and followed here:
//
//	passes of a seam        chains as they are found, about 6 operations
//	arrows within a seam    each pass waits for the one before it
//	arrows between seams    about 2 to each seam, nearly all seams have one (here somewhat fewer)
//	begins                  1 or 2 operations that wait for nothing; here 1
//	comparable pairs        40 to 85 %, 64 % at the mean
//	colours                 3 are asked for; the shelf has 1 to 3, some 90 % in one
//	needles                 2 on a machine, the second for a quarter to a half
//	feet, stitches          the second on one operation in twenty
//	heat                    2 values, the lower for one in eight
//
// Needles, feet, stitches and heat were read off by eye. Costs are those of
// workroom, which is likewise no measured truth.
func fitted(seed uint64, n int) order.Problem {
	r := rand.New(rand.NewPCG(seed, uint64(n)))
	p := workroom(r)
	garments := (n + 149) / 150
	seams := 0
	for g := range garments {
		fitGarment(&p, r, n*(g+1)/garments, &seams)
	}
	return p
}

// fitGarment adds one garment, up to n operations in all.
func fitGarment(p *order.Problem, r *rand.Rand, n int, seams *int) {
	weight := 0
	for _, c := range chains {
		weight += c.seams
	}
	var first, last []int  // operations of each seam so far
	free := map[int]bool{} // seams for which none waits yet
	for len(p.Operations) < n {
		passes, k := "m", r.IntN(weight) // each garment begins with a trial on a scrap
		if len(first) > 0 {
			for _, c := range chains {
				if k -= c.seams; k < 0 {
					passes = c.passes
					break
				}
			}
		}
		passes = passes[:min(len(passes), n-len(p.Operations))]
		begin := len(p.Operations)
		colour := max(r.IntN(20)-17, 0)
		stitch := r.IntN(20) / 19
		for at, pass := range passes {
			op := order.Operation{Rank: len(p.Operations), Group: *seams}
			if at > 0 {
				op.After = []int{len(p.Operations) - 1}
			}
			switch pass {
			case 't':
				op.Station = table
			case 'm', 'z':
				op.Station = machine
				op.Setting = []int{colour, r.IntN(5) / 3, 0, stitch}
				if pass == 'z' {
					op.Setting[2] = 1
				}
			case 'o':
				op.Station, op.Setting = overlocker, []int{colour}
			case 'i':
				op.Station, op.Setting = iron, []int{1 - (r.IntN(8)+1)/8}
			case 'h':
				op.Station = hand
			}
			p.Operations = append(p.Operations, op)
		}
		fitArrows(p, r, begin, first, last, free)
		free[len(first)] = true
		first, last = append(first, begin), append(last, len(p.Operations)-1)
		*seams++
	}
}

// fitArrows makes the seam that begins at begin wait for others: for the first
// operation of all, or for seams made lately, most of them such as none waits
// for yet.
func fitArrows(p *order.Problem, r *rand.Rand, begin int, first, last []int, free map[int]bool) {
	if len(first) == 0 {
		return
	}
	if r.IntN(100) < alone || len(first) == 1 {
		p.Operations[begin].After = append(p.Operations[begin].After, last[0])
		return
	}
	to := begin
	for range wanted + r.IntN(2) {
		for range 12 { // an arrow that says something new, if one is found
			k := len(first) - 1 - r.IntN(min(lately, len(first)))
			for tries := 0; tries < 4 && !free[k]; tries++ {
				k = len(first) - 1 - r.IntN(min(2*lately, len(first)))
			}
			from := first[k] + r.IntN(last[k]-first[k]+1)
			if r.IntN(3) > 0 {
				from = last[k]
			}
			if !waits(p, to, from) {
				delete(free, k)
				p.Operations[to].After = append(p.Operations[to].After, from)
				break
			}
		}
		to = begin + r.IntN(len(p.Operations)-begin)
	}
}

// waits reports whether an operation waits for another already.
func waits(p *order.Problem, then, first int) bool {
	for _, b := range p.Operations[then].After {
		if b == first || b > first && waits(p, b, first) {
			return true
		}
	}
	return false
}

// How many seams in a hundred wait for the first operation only, how far back the
// others look, and how many arrows they have at least.
const alone, lately, wanted = 27, 6, 3
