package process

import (
	"fmt"
	"slices"
	"strings"

	"bodkin/seams"
	"bodkin/seams/length"
	"bodkin/templates"
	cutter "bodkin/templates/cutting"
)

// paneling begins the name of the operation that joins a piece from panels.
const paneling = "panels"

// panelSeam is the allowance of a seam that joins panels, mm, and a plain seam's
// without a word from the house. Common practice, no source.
const panelSeam = 15

// narrow is the answer for a piece that is wider than its cloth: it is laid across,
// or joined from panels along the grain.
type narrow struct {
	piece   int // index in the operator's pieces
	across  bool
	at      []float64 // seams, mm from the middle of a piece on the fold, else from its left; of both halves
	hidden  string    // where the garment says so
	allow   float64
	because string
}

// narrowed finds an answer for every piece that is too wide for its cloth.
func (o *operator) narrowed() []narrow {
	var out []narrow
	for k := range o.pieces {
		p := &o.pieces[k]
		c := clothRole(o.cloths, p.Cloth)
		if p.Bias || c.width <= 0 || p.Width <= c.width {
			continue
		}
		n := narrow{piece: k, allow: o.room.facts().House("plain", panelSeam)}
		made := o.made.Pieces[slices.IndexFunc(o.made.Pieces, func(m templates.Piece) bool { return m.Name == p.Name })]
		switch {
		case len(made.JoinsAt) > 0 && n.join(p, c.width, made.JoinsAt):
			n.hidden = made.JoinsHide
			n.because = "there the seams do not show"
		case p.Height <= c.width && !c.cloth.OneWay && !c.cloth.Pile && c.cloth.Woven():
			n.across = true
			n.because = "the cloth is woven and looks alike both ways up and across; it hangs a little stiffer so"
		case n.join(p, c.width, nil):
			switch {
			case p.Height > c.width:
				n.because = "it is too long to be laid across"
			case !c.cloth.Woven():
				n.because = "knitted cloth gives across, and laid across it would give down the body instead"
			default:
				n.because = "the cloth has a direction"
			}
		default:
			continue
		}
		out = append(out, n)
	}
	return out
}

// join sets the seams of a piece: as few as can be, each as far out as the cloth and
// the places where it may lie allow. It reports false where they do not.
func (n *narrow) join(p *Piece, width float64, places []float64) bool {
	n.at = nil
	fold := p.Cut == "fold" && foldsUpright(*p)
	end := p.Width
	if fold {
		end /= 2
	}
	from, first := 0.0, fold
	for {
		room := width - 2*n.allow // of a panel between two seams
		switch {
		case first:
			room /= 2
		case from == 0:
			room = width - n.allow
		}
		if !first && from+room+n.allow >= end {
			return true
		}
		to := from + room
		if places != nil {
			to = from
			for _, x := range places {
				if x <= from+room {
					to = max(to, x)
				}
			}
		}
		if to <= from || to >= end {
			return false
		}
		n.at = append(n.at, to)
		from, first = to, false
	}
}

// panels are the pieces that are laid on the cloth instead: widths from the middle,
// or from the left, outwards, with their allowances.
func (n *narrow) panels(p *Piece) []cutter.Laid {
	fold := p.Cut == "fold" && foldsUpright(*p)
	end := p.Width
	if fold {
		end /= 2
	}
	var out []cutter.Laid
	from := 0.0
	for i, to := range append(slices.Clone(n.at), end) {
		l := cutter.Laid{Name: p.Title, Across: to - from, Along: p.Height, Count: p.Count, Place: cutter.Single}
		l.Area = p.AreaMM2 * l.Across / p.Width
		if to < end {
			l.Across += n.allow
		}
		switch {
		case fold && i == 0:
			l.Across, l.Area, l.Place = 2*l.Across, 2*l.Area, cutter.OnFold
		case fold:
			l.Across, l.Count, l.Place = l.Across+n.allow, 2*p.Count, cutter.Paired
		case i > 0:
			l.Across += n.allow
		}
		if !fold && p.Cut == "pair" {
			l.Place = cutter.Paired
		}
		out = append(out, l)
		from = to
	}
	return out
}

// told says how a piece is got out of narrow cloth, and why so.
func (o *operator) told(n narrow) string {
	p := &o.pieces[n.piece]
	c := clothRole(o.cloths, p.Cloth)
	said := func(mm float64) string { return length.Format(length.MM(mm), o.style) }
	text := fmt.Sprintf("The %s is %s wide and the cloth %s. ", lowerFirst(p.Title), said(p.Width), said(c.width))
	if n.across {
		return text + "Lay it across: its grain line from selvedge to selvedge, because " + n.because + "."
	}
	var widths []string
	for _, l := range n.panels(p) {
		if l.Place == cutter.OnFold {
			widths = append(widths, fmt.Sprintf("one of %s, on the fold", said(l.Across)))
		} else {
			widths = append(widths, fmt.Sprintf("%d of %s", l.Count, said(l.Across)))
		}
	}
	text += fmt.Sprintf("Cut it from panels, %s, %s of seam allowance at each join among it, and as long as the piece; the seams run along the grain", listWords(widths, "and"), said(n.allow))
	if n.hidden != "" {
		text += " " + n.hidden
	}
	return text + ", because " + n.because + "."
}

// joinPanels joins what is cut in panels before anything else is done to the piece.
func (o *operator) joinPanels() {
	for _, w := range o.narrow {
		p := &o.pieces[w.piece]
		if w.across {
			continue
		}
		rows, stitch, does := len(w.at), "301", "stitch"
		if p.Cut != "one" {
			rows *= 2
		}
		if !o.room.forms(stitch) {
			stitch, does = "202", "hand-stitch"
		}
		c := clothRole(o.cloths, p.Cloth)
		n := op{line: -1, act: o.act(does), cloths: []seams.Cloth{c.cloth}, layers: 2}
		n.ID, n.Does, n.Part = paneling+"."+p.Name, does, "panels of the "+lowerFirst(p.Title)
		n.Text = fmt.Sprintf("Join the panels of the %s, right sides together, %s from the edges", lowerFirst(p.Title), length.Format(length.MM(w.allow), o.style))
		if w.hidden != "" {
			n.Text += ", so that each seam lies " + w.hidden
		}
		n.Text += ". Neaten the edges together. From the wrong side, press them to one side, and go on as with a piece cut whole."
		n.Good = "The piece lies flat, as wide as its seam lines, and the hem's edges run on in one line."
		n.Length = p.Height * float64(rows*max(1, p.Count/o.quantity))
		if o.settle(&n, stitch, 0, "", c.thread) != nil {
			continue
		}
		o.time(&n)
		o.ops = append(o.ops, n)
	}
}

// panelsFirst: a piece is joined from its panels before it is sewn to anything.
func (o *operator) panelsFirst() {
	for i, n := range o.ops {
		piece, ok := strings.CutPrefix(n.ID, paneling+".")
		if !ok {
			continue
		}
		for j, l := range o.lines {
			if !slices.Contains(l.pieces, piece) {
				continue
			}
			k := slices.IndexFunc(o.span[j], func(k int) bool { return !o.ops[k].strip || slices.Contains(l.own, piece) })
			if k >= 0 && !o.reaches(o.span[j][k], i) {
				o.need(o.span[j][k], i, "its panels are joined before the piece is sewn to another")
			}
		}
	}
}
