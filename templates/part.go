package templates

import (
	"embed"
	"fmt"
	"path"
	"slices"
	"strings"

	"bodkin/seams/form"
)

// parts are the pieces of garment that several garments use, one a file.
//
//go:embed parts/*.yaml
var parts embed.FS

// Include brings a part into a garment: figures for what it wants, and edges,
// joins, pieces and cloths of the garment for what it takes.
type Include struct {
	Part  form.Text               `yaml:"part,required"`
	As    form.Text               `yaml:"as"`    // names start with this; the part's own name where absent
	Title string                  `yaml:"title"` // stands for {title} in the part's titles
	With  form.Pairs[form.Text]   `yaml:"with"`
	At    form.Pairs[[]form.Text] `yaml:"at"`
	First bool                    `yaml:"first"` // drawn before the garment's own pieces, whose figures may use its lengths
	If    form.Text               `yaml:"if"`
}

// Part is a piece of garment written once: a collar, a pocket, a cuff. It knows
// nothing of the garment but what an include hands it.
type Part struct {
	Name    string                  `yaml:"part,required"`
	Title   string                  `yaml:"title,required"`
	About   string                  `yaml:"about"`
	Source  string                  `yaml:"source,required"`
	Wants   form.Pairs[Want]        `yaml:"wants"` // figures
	Takes   form.Pairs[Taken]       `yaml:"takes"` // names of the garment
	Values  form.Pairs[form.Text]   `yaml:"values"`
	Lengths form.Pairs[[]form.Text] `yaml:"lengths"`
	Drafts  []PieceDraft            `yaml:"pieces"`
	Seams   []JoinDraft             `yaml:"joins"`
	Edges   []EdgeDraft             `yaml:"edges"`
	Details []DetailDraft           `yaml:"details"`
	Checks  []Check                 `yaml:"checks"`
}

// Want is a figure that a part is drawn to.
type Want struct {
	Title string    `yaml:"title,required"`
	Usual form.Text `yaml:"usual"` // a formula over the wants above it; needed in the include where absent
}

// Taken is a place of the garment that a part is sewn to.
type Taken struct {
	Title string      `yaml:"title,required"`
	Usual []form.Text `yaml:"usual"`
}

// origin is where something stands: in the garment's own file, or in a part.
type origin struct {
	scope int    // of its formulas
	under int    // 1 and the include's index; 0 in the garment's file
	local string // its name in the part's own file
}

// PartNames are the names of the parts on the shelf, sorted.
func PartNames() []string { return namesIn(parts, "parts") }

// LoadPart reads a part of the shelf. The error is [form.Faults] with places in
// the part's own file.
func LoadPart(name string) (*Part, error) {
	file := path.Join("parts", name+".yaml")
	data, err := parts.ReadFile(file)
	if err != nil {
		return nil, fmt.Errorf("no part %q on the shelf; the parts are %s", name, strings.Join(PartNames(), ", "))
	}
	var t Part
	if err := form.Decode(file, data, &t); err != nil {
		return nil, err
	}
	return &t, nil
}

// include writes every included part into the garment, under its own names.
func (p *parser) include() {
	p.g.scopes = []*scope{{}}
	seen := map[string]bool{}
	for i := range p.g.Includes {
		in := &p.g.Includes[i]
		if in.As.IsZero() {
			in.As = in.Part
		}
		if in.If.IsZero() {
			p.once(in.As, "include", seen)
		}
		p.g.scopes = append(p.g.scopes, &scope{})
		if !p.known(in.Part, "part on the shelf", PartNames()) {
			continue
		}
		t, err := LoadPart(in.Part.Value)
		if err != nil {
			p.faults = append(p.faults, faults(err)...)
			continue
		}
		if in.Title == "" {
			in.Title = t.Title
		}
		x := &inclusion{p: p, in: in, part: t, number: i + 1, taken: map[string][]form.Text{}}
		x.hand()
		x.write()
	}
}

// inclusion is one part on its way into a garment.
type inclusion struct {
	p      *parser
	in     *Include
	part   *Part
	number int
	taken  map[string][]form.Text
}

// hand checks what the include hands over, and defines the part's names.
func (x *inclusion) hand() {
	s := x.p.g.scopes[x.number]
	for _, w := range x.in.With {
		x.p.known(w.Key, "figure that the part "+x.part.Name+" wants", x.part.Wants.Keys())
	}
	for _, w := range x.part.Wants {
		if given, ok := x.in.With.Get(w.Key.Value); ok {
			s.defs = append(s.defs, definition{name: w.Key, formula: given, in: 0})
			continue
		}
		if w.Value.Usual.IsZero() {
			x.p.fault(x.in.Part, fmt.Sprintf("the part %s wants %s, %s", x.part.Name, w.Key.Value, w.Value.Title), "",
				"write it under with:")
			continue
		}
		s.defs = append(s.defs, definition{name: w.Key, formula: w.Value.Usual, in: x.number})
	}
	for _, t := range x.in.At {
		x.p.known(t.Key, "place that the part "+x.part.Name+" takes", x.part.Takes.Keys())
	}
	for _, t := range x.part.Takes {
		texts, ok := x.in.At.Get(t.Key.Value)
		if !ok {
			texts = t.Value.Usual
		}
		if len(texts) == 0 {
			x.p.fault(x.in.Part, fmt.Sprintf("the part %s takes %s, %s", x.part.Name, t.Key.Value, t.Value.Title), "",
				"write it under at:, as a list")
		}
		x.taken[t.Key.Value] = texts
	}
	for _, v := range x.part.Values {
		s.defs = append(s.defs, definition{name: v.Key, formula: v.Value, in: x.number})
	}
	for _, l := range x.part.Lengths {
		s.defs = append(s.defs, definition{name: l.Key, chain: x.texts(l.Value), in: x.number})
	}
}

// write adds the part's pieces, joins, edges, details and laws to the garment.
func (x *inclusion) write() {
	g := x.p.g
	from := func(local form.Text) origin { return origin{scope: x.number, under: x.number, local: local.Value} }
	var drafts []PieceDraft
	for _, d := range x.part.Drafts {
		d.from = from(d.Piece)
		d.Title, d.Piece, d.Cloth, d.Like = x.title(d.Title), x.named(d.Piece), x.one(d.Cloth), x.piece(d.Like)
		drafts = append(drafts, d)
	}
	if x.in.First {
		g.Drafts = slices.Insert(g.Drafts, x.p.first, drafts...)
		x.p.first += len(drafts)
	} else {
		g.Drafts = append(g.Drafts, drafts...)
	}
	for _, s := range x.part.Seams {
		s.from = from(s.Join)
		s.Title, s.Join, s.A, s.B = x.title(s.Title), x.named(s.Join), x.texts(s.A), x.texts(s.B)
		g.Seams = append(g.Seams, s)
	}
	for _, e := range x.part.Edges {
		e.from = from(e.Edge)
		e.Title, e.Edge, e.Along, e.Fits = x.title(e.Title), x.named(e.Edge), x.texts(e.Along), x.texts(e.Fits)
		e.Pieces, e.ClosedBy, e.Cloth = x.pieces(e.Pieces), x.one(e.ClosedBy), x.one(e.Cloth)
		g.Edges = append(g.Edges, e)
	}
	for _, t := range x.part.Details {
		t.from = from(t.Detail)
		t.Title, t.Detail, t.Piece, t.In = x.title(t.Title), x.named(t.Detail), x.piece(t.Piece), x.one(t.In)
		t.Along, t.Fits, t.Takes, t.Opens, t.Beyond = x.texts(t.Along), x.texts(t.Fits), x.texts(t.Takes), x.texts(t.Opens), x.texts(t.Beyond)
		t.Pieces, t.ClosedBy, t.At = x.pieces(t.Pieces), x.one(t.ClosedBy), x.one(t.At)
		t.Lines = slices.Clone(t.Lines)
		for i, ends := range t.Lines {
			t.Lines[i] = nil
			for _, end := range ends {
				t.Lines[i] = append(t.Lines[i], x.one(end))
			}
		}
		g.Details = append(g.Details, t)
	}
	for _, c := range x.part.Checks {
		c.from = origin{scope: x.number, under: x.number}
		g.Checks = append(g.Checks, c)
	}
}

func (x *inclusion) title(s string) string { return strings.ReplaceAll(s, "{title}", x.in.Title) }

// named is a part's own name in the garment: what the include calls the part,
// and after it the name in the part where that is another.
func (x *inclusion) named(t form.Text) form.Text {
	if t.Value == x.part.Name {
		t.Value = x.in.As.Value
	} else if !t.IsZero() {
		t.Value = x.in.As.Value + "-" + t.Value
	}
	return t
}

// piece is a piece of the part or one that it takes from the garment.
func (x *inclusion) piece(t form.Text) form.Text {
	if own := slices.ContainsFunc(x.part.Drafts, func(d PieceDraft) bool { return d.Piece.Value == t.Value }); own {
		return x.named(t)
	}
	return x.one(t)
}

func (x *inclusion) pieces(ts []form.Text) []form.Text {
	var out []form.Text
	for _, t := range ts {
		if taken := x.taken[t.Value]; len(taken) > 1 {
			out = append(out, taken...)
			continue
		}
		out = append(out, x.piece(t))
	}
	return out
}

// one is the single name handed over under a text, or the text itself.
func (x *inclusion) one(t form.Text) form.Text {
	if texts := x.taken[t.Value]; len(texts) == 1 {
		return texts[0]
	}
	if own := slices.ContainsFunc(x.part.Seams, func(s JoinDraft) bool { return s.Join.Value == t.Value }); own {
		return x.named(t)
	}
	return t
}

// texts are the edges of a chain: the part's own under their new names, those
// that it takes as the garment names them.
func (x *inclusion) texts(ts []form.Text) []form.Text {
	var out []form.Text
	for _, t := range ts {
		if taken, ok := x.taken[t.Value]; ok {
			out = append(out, taken...)
			continue
		}
		if piece, edge, ok := strings.Cut(t.Value, "."); ok {
			named := t
			named.Value = piece
			t.Value = x.piece(named).Value + "." + edge
		}
		out = append(out, t)
	}
	return out
}
