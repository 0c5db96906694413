package process

import (
	"slices"
	"strings"
)

// Link is one link of a chain of reasons: Then comes after First because.
type Link struct {
	Then, First string // operation ids
	Because     string
}

// WhyAfter is the shortest chain of reasons for which one of the operations then
// comes after one of the operations first, given by id. Passes that merely
// follow one another in a construction are left out of the chain. It is empty
// where nothing makes the one wait for the other.
func (p *Plan) WhyAfter(then, first []string) []Link {
	type visit struct {
		id   string
		from int // index in queue, -1 at the start
		link Link
	}
	after := map[string][]After{}
	var queue []visit
	seen := map[string]bool{}
	for _, o := range p.Operations {
		after[o.ID] = o.After
		if slices.Contains(then, o.ID) {
			queue = append(queue, visit{id: o.ID, from: -1})
			seen[o.ID] = true
		}
	}
	for k := 0; k < len(queue); k++ {
		v := queue[k]
		for _, a := range after[v.id] {
			if seen[a.ID] {
				continue
			}
			seen[a.ID] = true
			queue = append(queue, visit{a.ID, k, Link{v.id, a.ID, a.Because}})
			if !slices.Contains(first, a.ID) {
				continue
			}
			var chain []Link
			for i := len(queue) - 1; queue[i].from >= 0; i = queue[i].from {
				if queue[i].link.Because != nextPass {
					chain = append(chain, queue[i].link)
				}
			}
			slices.Reverse(chain)
			return chain
		}
	}
	return nil
}

// Missing are the operations, in planned order, that must come before those
// wanted and are neither done nor among them, all given by id.
func (p *Plan) Missing(wanted, done []string) []Operation {
	need := map[string]bool{}
	var out []Operation
	for _, o := range slices.Backward(p.Operations) {
		want := slices.Contains(wanted, o.ID)
		if slices.Contains(done, o.ID) || !want && !need[o.ID] {
			continue
		}
		for _, a := range o.After {
			need[a.ID] = true
		}
		if !want {
			out = append(out, o)
		}
	}
	slices.Reverse(out)
	return out
}

// Refusal is a place where a given order of seams cannot be kept.
type Refusal struct {
	Then, First string // Then was named before First, but must wait for it
	Because     string
}

// CheckOrder compares an order of whole seams, edges and details with what the
// garment's structure asks for. Names that the plan does not have are passed
// over, and so is the finishing of a flat-worked edge, which comes later by its
// nature. The result is empty where the order can be kept.
func (p *Plan) CheckOrder(names []string) []Refusal {
	place := map[string]int{}
	for i, n := range names {
		place[n] = i
	}
	var out []Refusal
	for _, o := range p.Operations {
		then, okThen := place[o.Seam]
		for _, a := range o.After {
			seam, _, _ := strings.Cut(a.ID, ".")
			first, okFirst := place[seam]
			if okThen && okFirst && then < first && !o.Closing {
				r := Refusal{o.Seam, seam, a.Because}
				if !slices.Contains(out, r) {
					out = append(out, r)
				}
			}
		}
	}
	return out
}
