package templates

import (
	"fmt"
	"slices"
	"strings"

	"bodkin/seams/form"
	"bodkin/templates/outline"
)

// detailKind says where a kind of detail lies and what it is described by.
type detailKind struct {
	name  string
	wants []string // keys it must have
	may   []string // keys it may have besides title, if, sew and the sides
}

// kindsOfDetail are the details that a garment may have, as the shelf of
// constructions has them.
func kindsOfDetail() []detailKind {
	band := []string{"along", "pieces"}
	more := []string{"fits", "ease", "gather", "depth", "lap", "strain", "across", "closed", "closed_by", "goes_over"}
	return []detailKind{
		{"dart", []string{"piece", "between", "point", "press", "toward"}, nil},
		{"tuck", []string{"piece", "depth", "count"}, []string{"takes", "lines", "length", "across"}},
		{"pleat", []string{"piece", "depth", "count"}, []string{"takes", "lines", "length"}},
		{"gathers", []string{"piece", "takes", "length"}, nil},
		{"patch-pocket", []string{"piece", "pieces"}, []string{"lines", "fits", "depth", "count"}},
		{"in-seam-pocket", []string{"in", "pieces", "length", "after"}, []string{"fits"}},
		{"slanted-pocket", []string{"along", "pieces", "beyond"}, []string{"fits"}},
		{"zip", []string{"in", "length", "at"}, nil},
		{"vent", []string{"in", "length", "at"}, []string{"depth"}},
		{"placket", []string{"piece", "length"}, []string{"lines", "pieces", "opens", "depth"}},
		{"buttonhole", []string{"piece", "count"}, []string{"lines", "length"}},
		{"button", []string{"piece", "count"}, []string{"lines", "length"}},
		{"hook", []string{"piece", "count"}, []string{"lines"}},
		{"snap", []string{"piece", "count"}, []string{"lines"}},
		{"loop", []string{"piece", "count"}, []string{"lines", "length"}},
		{"tie", []string{"piece", "count", "length"}, []string{"lines", "depth"}},
		{"front-band", []string{"along", "depth"}, []string{"interface", "strain"}},
		{"strap", []string{"piece", "count", "length"}, []string{"lines", "depth"}},
		{"belt", []string{"pieces", "length", "depth"}, nil},
		{"waistband", band, more},
		{"cuff", band, more},
		{"stand-collar", band, more},
		{"flat-collar", band, more},
		{"shirt-collar", band, more},
		{"lining", []string{"pieces"}, []string{"depth"}},
		{"lining-edge", band, more},
		{"lining-armhole", []string{"along"}, more},
		{hungLining, []string{"along", "pieces", "fits"}, []string{"across", "closed"}},
		{"lining-opening", []string{"in", "length", "at"}, nil},
	}
}

// hungLining is the kind of detail that lays a lining's edge under one of the
// garment, which something else finishes: that takes both in.
const hungLining = "lining-hung"

// keys are the keys of the form that a detail has.
func (t *DetailDraft) keys() []string {
	var keys []string
	has := func(key string, yes bool) {
		if yes {
			keys = append(keys, key)
		}
	}
	has("piece", !t.Piece.IsZero())
	has("in", !t.In.IsZero())
	has("along", len(t.Along) > 0)
	has("across", t.Across)
	has("closed", t.Closed)
	has("closed_by", !t.ClosedBy.IsZero())
	has("pieces", len(t.Pieces) > 0)
	has("fits", len(t.Fits) > 0)
	has("beyond", len(t.Beyond) > 0)
	has("ease", len(t.Ease) > 0)
	has("gather", len(t.Gather) > 0)
	has("takes", len(t.Takes) > 0)
	has("opens", len(t.Opens) > 0)
	has("interface", t.Interface != "")
	has("length", !t.Length.IsZero())
	has("at", !t.At.IsZero())
	has("after", !t.After.IsZero())
	has("depth", !t.Depth.IsZero())
	has("lap", !t.Lap.IsZero())
	has("count", !t.Count.IsZero())
	has("lines", len(t.Lines) > 0)
	has("between", len(t.Between) > 0)
	has("point", !t.Point.IsZero())
	has("press", t.Press != "")
	has("toward", !t.Toward.IsZero())
	has("goes_over", !t.GoesOver.IsZero())
	has("strain", t.Strain != 0)
	return keys
}

// details checks every detail for what its kind wants, and its names and
// formulas.
func (p *parser) details() {
	g := p.g
	kinds := kindsOfDetail()
	var names []string
	for _, k := range kinds {
		names = append(names, k.name)
	}
	for i := range g.Details {
		t := &g.Details[i]
		p.spelt(t.Detail, "detail")
		if !p.known(t.Kind, "kind of detail", names) {
			continue
		}
		kind := kinds[slices.Index(names, t.Kind.Value)]
		keys := t.keys()
		for _, k := range kind.wants {
			if !slices.Contains(keys, k) {
				p.fault(t.Detail, fmt.Sprintf("a %s wants %s:", spaced(kind.name), k), "", "its keys are "+strings.Join(append(kind.wants, kind.may...), ", "))
			}
		}
		for _, k := range keys {
			if !slices.Contains(kind.wants, k) && !slices.Contains(kind.may, k) {
				p.fault(t.Detail, fmt.Sprintf("a %s has no %s:", spaced(kind.name), k), "", "its keys are "+strings.Join(append(kind.wants, kind.may...), ", "))
			}
		}
		if t.EachSide && t.OneSide {
			p.fault(t.Detail, "it is on each side and on one side", "", "keep each_side or one_side, not both")
		}
		p.detailNames(t)
	}
	p.mouths()
}

func spaced(kind string) string { return strings.ReplaceAll(kind, "-", " ") }

func (p *parser) detailNames(t *DetailDraft) {
	if !t.Piece.IsZero() && !p.known(t.Piece, "piece", p.pieceNames()) {
		return
	}
	for _, piece := range t.Pieces {
		p.known(piece, "piece", p.pieceNames())
	}
	for _, join := range []form.Text{t.In, t.ClosedBy} {
		if !join.IsZero() {
			p.known(join, "join", p.joinNames())
		}
	}
	for _, chain := range [][]form.Text{t.Along, t.Fits, t.Takes, t.Opens, t.Beyond} {
		if len(chain) > 0 {
			p.chainNames(t.Detail, chain)
		}
	}
	if !t.At.IsZero() {
		p.known(t.At, "end of a join", []string{"from", "to"})
	}
	p.strain(t.Detail, t.Strain)
	p.fullness(t.Detail, t.Ease, t.Gather)
	for _, f := range slices.Concat(t.Ease, t.Gather, []form.Text{t.Length, t.After, t.Depth, t.Lap, t.Count, t.GoesOver}) {
		p.optional(f, t.from.scope)
	}
	if len(t.Lines) > 0 {
		points := p.g.draft(t.Piece.Value).Points.Keys()
		for _, line := range t.Lines {
			if len(line) != 2 {
				p.fault(t.Detail, fmt.Sprintf("a line runs between two points, and here are %d", len(line)), "", "write [point, point]")
				continue
			}
			p.known(line[0], "point", points)
			p.known(line[1], "point", points)
		}
	}
	if t.Kind.Value == "dart" && len(t.Between) > 0 {
		p.dart(t)
	}
}

// detailMade measures a detail other than a dart.
func (w *workshop) detailMade(i int) {
	t := &w.g.Details[i]
	number := func(f form.Text) float64 { return w.length(f, t.from.scope) }
	d := Detail{
		Name: t.Detail.Value, Title: t.Title, Kind: t.Kind.Value, Piece: t.Piece.Value, Copies: 1,
		In: t.In.Value, End: t.At.Value, Across: t.Across, ClosedBy: t.ClosedBy.Value,
		Depth: mm(number(t.Depth)), Lap: mm(number(t.Lap)), Length: mm(number(t.Length)), After: mm(number(t.After)),
		Count: max(1, int(w.number(t.Count, t.from.scope)+0.5)), Strain: t.Strain, Insist: t.Sew.Value,
		TightestRadius: straightRadius, Interface: t.Interface,
	}
	if d.Interface == "" {
		d.Interface = "none"
	}
	for _, piece := range t.Pieces {
		d.Pieces = append(d.Pieces, piece.Value)
	}
	if d.Kind == "gathers" {
		d.Length, d.Eased = mm(w.chainLength(t.Takes)), mm(w.chainLength(t.Takes)-number(t.Length))
	}
	d.Fits, _ = w.g.chain(t.Fits)
	d.Takes, _ = w.g.chain(t.Takes)
	d.Beyond, _ = w.g.chain(t.Beyond)
	if t.EachSide {
		d.Copies = 2
	}
	if d.In != "" && !t.OneSide {
		if k := slices.IndexFunc(w.g.Seams, func(s JoinDraft) bool { return s.Join.Value == d.In }); w.g.Seams[k].EachSide {
			d.Copies = 2
		}
	}
	if s := w.sheet(d.Piece); s != nil {
		for _, line := range t.Lines {
			d.Lines = append(d.Lines, [2]outline.Point{s.points[line[0].Value], s.points[line[1].Value]})
		}
		p := w.piece(d.Piece)
		for _, at := range d.Places() {
			p.Marks = append(p.Marks, Mark{t.Title, at.X, at.Y})
		}
	}
	if len(t.Along) > 0 {
		w.attached(t, &d, w.g.topology.details[i])
	}
	if d.In != "" {
		w.within(t, &d)
	}
	w.made.Details = append(w.made.Details, d)
}

// InRow reports whether the detail occurs several times along its one line, as
// buttons do down a front.
func (d *Detail) InRow() bool { return len(d.Lines) == 1 && d.Count > 1 }

// Places are where the buttons or buttonholes of a row lie, first and last at its
// ends, the others evenly between.
func (d *Detail) Places() []outline.Point {
	if !d.InRow() {
		return nil
	}
	from, to := d.Lines[0][0], d.Lines[0][1]
	var out []outline.Point
	for k := range d.Count {
		out = append(out, from.Add(to.Sub(from).Scale(float64(k)/float64(d.Count-1))))
	}
	return out
}

// attached measures what runs along an edge, and walks its own edges against it.
func (w *workshop) attached(t *DetailDraft, d *Detail, along walked) {
	run := w.run(along, t.Across, t.Closed && !t.Across)
	d.Along, d.Length = along.parts, mm(run.length)
	d.Ways, d.FitsWays = w.ways(along), w.fitsWays(d.Fits, along)
	d.Closed = t.Closed && len(w.opened(along)) == 0
	d.TightestRadius, d.Turning = radius(run.tightest), run.turning
	if len(t.Fits) == 0 {
		return
	}
	own := w.sideLength(d.Fits, t.Across)
	if d.Copies == 2 || t.OneSide {
		own = w.sideLength(d.Fits, false)
	}
	w.fit(fitted{at: t.Detail, title: t.Title, scope: t.from.scope, a: d.Along, b: d.Fits,
		lengthA: run.length, lengthB: own, ease: t.Ease, gather: t.Gather})
	if len(t.Ease)+len(t.Gather) > 0 {
		d.Eased = mm(run.length - own)
	}
	w.passes(t.GoesOver, t.from.scope, t.Title, run.length, 1, along)
}

// within checks that an opening or a pocket has room in its join.
func (w *workshop) within(t *DetailDraft, d *Detail) {
	k := slices.IndexFunc(w.made.Joins, func(j Join) bool { return j.Name == d.In })
	j := w.made.Joins[k]
	if room := j.LengthA - d.After; d.Length > room+1 {
		w.fault(t.Detail, fmt.Sprintf("the %s is %s long, and the %s has only %s for it", t.Title, said(float64(d.Length)), j.Title, said(float64(room))),
			"make it shorter, or the seam longer")
	}
}
