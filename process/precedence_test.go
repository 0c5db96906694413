package process_test

import (
	"slices"
	"strings"
	"testing"

	"bodkin/process"
	"bodkin/process/order"
	"bodkin/templates"
)

// earlier are the operations that must come before each, directly or through others:
// what holds by them holds in every order that the garment lets through.
func earlier(p *process.Plan) map[string]map[string]bool {
	all := map[string]map[string]bool{}
	for _, o := range p.Operations { // in planned order, so that those before are done
		before := map[string]bool{}
		for _, a := range o.After {
			before[a.ID] = true
			for id := range all[a.ID] {
				before[id] = true
			}
		}
		all[o.ID] = before
	}
	return all
}

// ordered is a plan with what its rules are asked of.
type ordered struct {
	garment string
	plan    *process.Plan
	before  map[string]map[string]bool
}

func (o ordered) seam(op process.Operation) process.Seam {
	if k := slices.IndexFunc(o.plan.Seams, func(s process.Seam) bool { return s.Name == op.Seam }); k >= 0 {
		return o.plan.Seams[k]
	}
	return process.Seam{}
}

// pieces are those whose edges a seam lies on.
func (o ordered) pieces(seam string) (out []string) {
	for _, p := range o.plan.Pieces {
		if slices.ContainsFunc(p.Edges, func(e process.Edge) bool { return e.Seam == seam }) {
			out = append(out, p.Name)
		}
	}
	return out
}

// sewn reports an operation that stitches a seam of the garment's pieces together.
func (o ordered) sewn(op process.Operation) bool {
	return op.Does == "stitch" && o.seam(op).Kind == "seam"
}

// The published rules of precedence, each as a law over every garment of the shelf:
// where it applies, the first of the two operations must come before the second in
// any order that the derived precedence lets through.
func TestPublishedPrecedence(t *testing.T) {
	shelf := loadShelf(t)
	var all []ordered
	for at, name := range templates.Names() {
		g := garmentOf(t, name)
		p, err := process.Work(t.Context(), process.Input{Job: jobFor(g, "cotton-poplin", "cotton-lawn"), Garment: g, Workroom: rooms()[[]int{0, 3}[at%2]], Shelf: shelf}, order.Options{Nodes: 1})
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		all = append(all, ordered{name, p, earlier(p)})
	}
	for _, rule := range []struct {
		rule, source string
		first        func(o ordered, op process.Operation) bool
		then         func(o ordered, first, op process.Operation) bool
	}{
		{"interfacing before its piece is sewn to another", "C. Amaden-Crawford, A Guide to Fashion Sewing, pp. 84-94",
			func(o ordered, op process.Operation) bool {
				return op.Does == "fuse" && strings.HasPrefix(op.ID, "interface.")
			},
			func(o ordered, first, op process.Operation) bool {
				return o.sewn(op) && slices.Contains(o.pieces(op.Seam), strings.TrimPrefix(first.ID, "interface."))
			}},
		{"a dart pressed before a seam takes its mouth in", "A. W. Koester, Pressing, Oregon State Univ. Extension (c. 1977)",
			func(o ordered, op process.Operation) bool { return op.Does == "press" && o.seam(op).Kind == "dart" },
			func(o ordered, first, op process.Operation) bool {
				return o.sewn(op) && o.opensInto(first.Seam, op.Seam)
			}},
		{"a seam pressed before another crosses it", "A. W. Koester, Pressing, Oregon State Univ. Extension (c. 1977)",
			func(o ordered, op process.Operation) bool { return op.Does == "press" && o.seam(op).Kind == "seam" },
			func(o ordered, first, op process.Operation) bool {
				return op.Does == "stitch" && op.Seam != first.Seam && o.runsOver(op, first.Seam)
			}},
		{"staystitching before anything is sewn to its edge", "from memory",
			func(o ordered, op process.Operation) bool { return o.seam(op).Kind == "staystitch" },
			func(o ordered, first, op process.Operation) bool {
				return op.Does == "stitch" && op.Seam+"-staystitch" == first.Seam && o.onGarment(op)
			}},
		{"a tube casing only after the seams that it runs over are finished and pressed", "Alberta distance-learning sewing pages",
			func(o ordered, op process.Operation) bool { return op.Does == "press" && o.seam(op).Kind == "seam" },
			func(o ordered, first, op process.Operation) bool {
				return o.seam(op).Kind == "casing" && o.runsOver(op, first.Seam)
			}},
		{"the fitting before what settles the length", "The Hem of Your Dress or Skirt, L-359, Texas Agricultural Extension Service: hem after hanging, the garment otherwise complete",
			func(o ordered, op process.Operation) bool { return op.Does == "fit" && op.Seam == "" },
			func(o ordered, first, op process.Operation) bool {
				return op.Seam == "hem" && o.seam(op).Work == "round" && o.garment != "pleated-skirt" // whose pleats are folded with the hem
			}},
		{"pockets while the piece lies flat, before the seam that closes it", "a web page, common practice",
			func(o ordered, op process.Operation) bool { return strings.HasSuffix(o.seam(op).Kind, "patch-pocket") },
			func(o ordered, first, op process.Operation) bool { return o.sewn(op) && op.Seam == "side" }},
		{"a zip before the waistband that closes over its end", "C. Amaden-Crawford, A Guide to Fashion Sewing, pp. 84-94",
			func(o ordered, op process.Operation) bool { return o.seam(op).Kind == "zip" && op.Does == "stitch" },
			func(o ordered, first, op process.Operation) bool {
				return o.seam(op).Kind == "waistband" && op.Does == "stitch"
			}},
		{"buttonholes before buttons", "from memory",
			func(o ordered, op process.Operation) bool { return o.seam(op).Kind == "buttonhole" },
			func(o ordered, first, op process.Operation) bool {
				return o.seam(op).Kind == "button" && op.Does != "mark" && strings.TrimSuffix(op.Seam, "button") == strings.TrimSuffix(first.Seam, "buttonhole")
			}},
		{"buttons last, after the collar", "a web page, common practice",
			func(o ordered, op process.Operation) bool { return o.seam(op).Kind == "shirt-collar" },
			func(o ordered, first, op process.Operation) bool { return op.Seam == "front-button" }},
		{"the shoulders before the collar", "three factory lists of a shirt agree (P. Sarkar, 2011, and others)",
			func(o ordered, op process.Operation) bool { return o.sewn(op) && op.Seam == "yoke-shoulder" },
			func(o ordered, first, op process.Operation) bool {
				return o.seam(op).Kind == "shirt-collar" && op.Does == "stitch" && o.onGarment(op)
			}},
		{"cut before anything is sewn", "of itself",
			func(o ordered, op process.Operation) bool { return op.ID == "cut.main" },
			func(o ordered, first, op process.Operation) bool { return o.sewn(op) }},
	} {
		n := 0
		for _, o := range all {
			for _, first := range o.plan.Operations {
				if !rule.first(o, first) {
					continue
				}
				for _, then := range o.plan.Operations {
					if first.ID == then.ID || !rule.then(o, first, then) {
						continue
					}
					n++
					if !o.before[then.ID][first.ID] {
						t.Errorf("%s (%s): in %s nothing holds %s before %s", rule.rule, rule.source, o.garment, first.ID, then.ID)
					}
				}
			}
		}
		if n == 0 {
			t.Errorf("%s: no garment has it", rule.rule)
		}
		t.Logf("%s: %d times", rule.rule, n)
	}
}

// onGarment reports an operation with the garment in hand, and not a collar, a facing
// or a band by itself: another seam has been worked before it.
func (o ordered) onGarment(op process.Operation) bool {
	for _, x := range o.plan.Operations {
		if s := o.seam(x); s.Name != "" && s.Name != op.Seam && s.Kind != "staystitch" && o.before[op.ID][x.ID] {
			return true
		}
	}
	return false
}

// opensInto reports whether a dart's mouth lies beside an edge of a seam.
func (o ordered) opensInto(dart, seam string) bool {
	for _, p := range o.plan.Pieces {
		for i, e := range p.Edges {
			n := len(p.Edges)
			if e.Seam == dart && (p.Edges[(i+1)%n].Seam == seam || p.Edges[(i+n-1)%n].Seam == seam) {
				return true
			}
		}
	}
	return false
}

// runsOver reports whether an operation's seam is said to run over the end of
// another, by any of its operations.
func (o ordered) runsOver(op process.Operation, seam string) bool {
	for _, x := range o.plan.Operations {
		if x.Seam != op.Seam || x.Pass > op.Pass {
			continue
		}
		for _, a := range x.After {
			if strings.Contains(a.Because, "runs over the end of") && strings.HasPrefix(a.ID, seam+".") {
				return true
			}
		}
	}
	return false
}
