package templates

import (
	"fmt"
	"maps"
	"slices"
	"strings"

	"bodkin/seams/form"
	"bodkin/seams/formula"
)

// mostVariants bounds how many combinations of choices are looked through when
// a garment is read.
const mostVariants = 256

// conditions compiles what stands under if:.
func (p *parser) conditions() {
	g := p.g
	take := func(t form.Text, scope int) {
		if !t.IsZero() {
			g.varies = true
			p.compile(t, formula.Condition, g.scopes[scope].names)
		}
	}
	for _, c := range g.Cloths {
		take(c.Value.If, 0)
	}
	for _, i := range g.Includes {
		take(i.If, 0)
	}
	for _, d := range g.Drafts {
		take(d.If, d.from.under)
		for _, s := range d.Outline {
			take(s.If, d.from.scope)
		}
		for _, m := range d.Marks {
			take(m.If, d.from.under)
		}
	}
	for _, s := range g.Seams {
		take(s.If, s.from.under)
	}
	for _, e := range g.Edges {
		take(e.If, e.from.under)
	}
	for _, t := range g.Details {
		take(t.If, t.from.under)
	}
	for _, c := range g.Checks {
		take(c.If, c.from.under)
	}
}

// variant is the garment with only what it has at these choices, its edges
// followed from piece to piece.
func (g *Garment) variant(in *given) (*Garment, error) {
	if !g.varies {
		return g, nil
	}
	v, err := g.sift(in.scopes)
	if err != nil {
		return nil, err
	}
	p := &parser{g: v, whole: g}
	p.structural()
	if err := p.faults.Err(); err != nil {
		return nil, err
	}
	return v, nil
}

// sift keeps what stands under no if:, or under one that holds.
func (g *Garment) sift(scopes []formula.Values) (*Garment, error) {
	v := *g
	var fs form.Faults
	holds := func(t form.Text, scope int) bool {
		if t.IsZero() {
			return true
		}
		yes, err := g.formulas[t.At].Holds(scopes[scope])
		if err != nil {
			fs = append(fs, faults(err)...)
		}
		return yes
	}
	has := func(t form.Text, from origin) bool {
		return (from.under == 0 || holds(g.Includes[from.under-1].If, 0)) && holds(t, from.under)
	}
	v.Cloths = keep(g.Cloths, func(c form.Pair[Cloth]) bool { return holds(c.Value.If, 0) })
	v.Drafts = keep(g.Drafts, func(d PieceDraft) bool { return has(d.If, d.from) })
	for i := range v.Drafts {
		d := &v.Drafts[i]
		d.Outline = keep(d.Outline, func(s Stroke) bool { return holds(s.If, d.from.scope) })
		d.Marks = keep(d.Marks, func(m MarkDraft) bool { return holds(m.If, d.from.under) })
	}
	v.Seams = keep(g.Seams, func(s JoinDraft) bool { return has(s.If, s.from) })
	v.Edges = keep(g.Edges, func(e EdgeDraft) bool { return has(e.If, e.from) })
	v.Details = keep(g.Details, func(t DetailDraft) bool {
		return has(t.If, t.from) && (!t.follows || v.draft(t.Piece.Value) != nil)
	})
	v.Checks = keep(g.Checks, func(c Check) bool { return has(c.If, c.from) })
	v.Lined = g.Lined || slices.ContainsFunc(v.Details, func(t DetailDraft) bool { return strings.HasPrefix(t.Kind.Value, "lining") })
	return &v, fs.Err()
}

func keep[S ~[]T, T any](all S, want func(T) bool) S {
	var out S
	for _, x := range all {
		if want(x) {
			out = append(out, x)
		}
	}
	return out
}

// variants looks through every combination of the words that something depends
// on, so that a garment is known to hold together before it is made.
func (p *parser) variants() {
	g := p.g
	if !g.varies {
		p.whole = g
		p.structural()
		return
	}
	usual, err := g.take(nil, nil)
	if err != nil {
		return // a measure has no default; Make looks at the variant
	}
	combinations := []map[string]string{{}}
	for _, c := range g.Choices {
		if words := c.Value.Words(); len(words) > 0 && p.dependsOn(c.Key.Value) && len(combinations)*len(words) <= mostVariants {
			var more []map[string]string
			for _, have := range combinations {
				for _, w := range words {
					with := maps.Clone(have)
					with[c.Key.Value] = w
					more = append(more, with)
				}
			}
			combinations = more
		}
	}
	for _, choices := range combinations {
		in := &given{scopes: []formula.Values{maps.Clone(usual.scopes[0])}}
		for name, word := range choices {
			in.scopes[0][name] = word
		}
		if err := g.again(in); err != nil {
			continue // a formula that fails at these choices is told by Make
		}
		v, err := g.sift(in.scopes)
		if err != nil {
			p.faults = append(p.faults, faults(err)...)
			return
		}
		sub := &parser{g: v, whole: g}
		if sub.structural(); len(sub.faults) > 0 {
			for i := range sub.faults {
				sub.faults[i].Message = saying(g, choices) + sub.faults[i].Message
			}
			p.faults = append(p.faults, sub.faults...)
			return
		}
	}
}

// again works the values out anew where choices were changed.
func (g *Garment) again(in *given) error {
	for _, d := range g.scopes[0].defs {
		delete(in.scopes[0], d.name.Value)
	}
	for range g.scopes[1:] {
		in.scopes = append(in.scopes, formula.Values{})
	}
	return g.settle(in, &workshop{g: g})
}

// saying names the choices in the garment's order: "with lining yes: ".
func saying(g *Garment, choices map[string]string) string {
	var words []string
	for _, c := range g.Choices {
		if w, ok := choices[c.Key.Value]; ok {
			words = append(words, c.Key.Value+" "+w)
		}
	}
	if len(words) == 0 {
		return ""
	}
	return "with " + strings.Join(words, ", ") + ": "
}

// dependsOn reports whether something under if: asks about a choice, itself or
// through a value or an include.
func (p *parser) dependsOn(choice string) bool {
	g := p.g
	var texts []form.Text
	for _, c := range g.Cloths {
		texts = append(texts, c.Value.If)
	}
	for _, i := range g.Includes {
		texts = append(texts, i.If)
	}
	for _, d := range g.Drafts {
		texts = append(texts, d.If)
		for _, s := range d.Outline {
			texts = append(texts, s.If)
		}
	}
	for _, s := range g.Seams {
		texts = append(texts, s.If)
	}
	for _, e := range g.Edges {
		texts = append(texts, e.If)
	}
	for _, t := range g.Details {
		texts = append(texts, t.If)
	}
	for _, s := range g.scopes {
		for _, d := range s.defs {
			texts = append(texts, d.formula)
		}
	}
	return slices.ContainsFunc(texts, func(t form.Text) bool {
		for name := range identifiers(t.Value) {
			if name == choice {
				return true
			}
		}
		return false
	})
}

// structural checks a garment whose pieces are all there: that names stand
// once, that chains name edges it has, which sides they occur on, and how the
// edges meet.
func (p *parser) structural() {
	p.unique()
	p.present()
	p.redrawn()
	p.hands()
	if len(p.faults) == 0 {
		p.g.topology = p.connect()
	}
}

// redrawn checks the pieces whose lines differ from choice to choice: that those
// that are left go round once, with their darts.
func (p *parser) redrawn() {
	if p.g == p.whole {
		return // nothing differs
	}
	for i := range p.g.Drafts {
		p.round(&p.g.Drafts[i])
	}
	for i := range p.g.Details {
		if t := &p.g.Details[i]; t.Kind.Value == "dart" {
			p.dart(t)
		}
	}
	p.mouths()
}

func (p *parser) unique() {
	g := p.g
	seen := map[string]bool{}
	for i := range g.Drafts {
		p.once(g.Drafts[i].Piece, "piece", seen)
	}
	seen = map[string]bool{}
	for _, s := range g.Seams {
		p.once(s.Join, "join", seen)
	}
	for _, e := range g.Edges {
		p.once(e.Edge, "edge", seen)
	}
	for _, t := range g.Details {
		p.once(t.Detail, "detail", seen)
	}
}

// present reports chains, pieces and joins that this variant does not have.
func (p *parser) present() {
	g := p.g
	var edges, pieces, joins, cloths []string
	for i := range g.Drafts {
		d := &g.Drafts[i]
		pieces = append(pieces, d.Piece.Value)
		for _, e := range d.edges() {
			edges = append(edges, d.Piece.Value+"."+e)
		}
	}
	for _, s := range g.Seams {
		joins = append(joins, s.Join.Value)
	}
	cloths = g.Cloths.Keys()
	want := func(what string, among []string, needs string, ts ...form.Text) {
		for _, t := range ts {
			if !t.IsZero() && !slices.Contains(among, t.Value) {
				p.fault(t, fmt.Sprintf("the %s %s is left out here, and the %s needs it", what, t.Value, needs), "",
					"give both the same if:, or name another")
			}
		}
	}
	for i := range g.Drafts {
		want("cloth", cloths, g.Drafts[i].Piece.Value, g.Drafts[i].Cloth)
	}
	for _, s := range g.Seams {
		want("edge", edges, s.Title, slices.Concat(s.A, s.B)...)
	}
	for _, e := range g.Edges {
		want("edge", edges, e.Title, slices.Concat(e.Along, e.Fits)...)
		want("piece", pieces, e.Title, e.Pieces...)
		want("join", joins, e.Title, e.ClosedBy)
		want("cloth", cloths, e.Title, e.Cloth)
	}
	for _, t := range g.Details {
		want("edge", edges, t.Title, slices.Concat(t.Along, t.Fits, t.Takes, t.Opens, t.Beyond)...)
		want("piece", pieces, t.Title, append(slices.Clone(t.Pieces), t.Piece)...)
		want("join", joins, t.Title, t.In, t.ClosedBy)
	}
}

// hands checks that what occurs left and right says so.
func (p *parser) hands() {
	g := p.g
	for i := range g.Seams {
		s := &g.Seams[i]
		same := slices.EqualFunc(s.A, s.B, func(a, b form.Text) bool { return a.Value == b.Value })
		p.sides(s.Join, slices.Concat(s.A, s.B), s.EachSide, same || s.Across)
	}
	for i := range g.Edges {
		p.sides(g.Edges[i].Edge, g.Edges[i].Along, g.Edges[i].EachSide, g.Edges[i].Across)
	}
	for i := range g.Details {
		t := &g.Details[i]
		switch {
		case len(t.Along) > 0:
			p.sides(t.Detail, t.Along, t.EachSide, t.Across || t.OneSide)
		case !t.Piece.IsZero():
			p.sides(t.Detail, []form.Text{{Value: t.Piece.Value + "."}}, t.EachSide, t.OneSide || t.Across)
		}
	}
}
