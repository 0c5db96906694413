package process

import (
	"fmt"
	"slices"
	"strconv"

	"bodkin/seams"
	"bodkin/seams/form"
	"bodkin/seams/length"
	"bodkin/templates"
)

// op is an operation on its way to the plan.
type op struct {
	Operation
	line      int // index in lines, -1 for what belongs to the whole garment
	station   int
	strip     bool // only the strip is in hand
	closing   bool // waits for the join that closes a flat-worked edge
	after     []need
	cloths    []seams.Cloth
	layers    int
	row       seams.Row // of machine stitching; zero for a plain row of two plies
	act       seams.Act
	stitching float64 // of its minutes, those of the machine by itself
	glue      int     // heat that the interfacing in hand needs and must not pass; 0 where none is fused
	many      int     // in a sitting: of how many alike garments; 0 of what serves all
}

// need is an operation, by index, that must come first.
type need struct {
	op      int
	because string
	asked   bool // by the maker, not by the garment
}

// operator turns the passes of every line into operations.
type operator struct {
	shelf    *seams.Shelf
	room     *room
	lines    []*line
	cloths   []clothIn
	pieces   []Piece
	facings  []Interfacing
	style    length.Style
	quantity int
	made     *templates.Made
	ops      []op
	span     [][]int   // operations of each line, in order
	crossed  []crossed // thickest place of each line
	narrow   []narrow  // pieces wider than their cloth
	wishes   []wishFor // of the job
	cones    form.Pairs[int]
	near     form.Pairs[[]form.Text] // shades that blend
	lacking  []Notice                // of cones
	labels   []string                // in a sitting: of the garments, by number from 1
}

// operate returns the operations of the whole job, each with its station, its
// setting, its minutes and its words, not yet in order.
func (o *operator) operate() error {
	o.span = make([][]int, len(o.lines))
	o.beforeSewing()
	for i, l := range o.lines {
		if l.stayed {
			if err := o.stay(i, l); err != nil {
				return err
			}
		}
		if l.rounded != nil {
			if err := o.layStrip(i, l); err != nil {
				return err
			}
		}
		for _, pass := range l.sized.Passes {
			if err := o.pass(i, l, pass); err != nil {
				return err
			}
		}
	}
	o.letDrop()
	o.tryOn()
	o.tests()
	o.leaveThreaded()
	return nil
}

func (o *operator) pass(i int, l *line, sized seams.SizedPass) error {
	p := *sized.Pass
	if p.Does == "fuse" {
		does, words, ok := l.attaching()
		if !ok {
			return nil // nothing to put on here
		}
		p.Does, p.Text = does, words
		if does == "baste" {
			p.Stitch = basting
		}
	}
	if p.On == "strip" && (p.Does == "join-strip" || p.Only == "joined") && l.strip != nil && l.strip.Joins == 0 {
		return nil // cut in one
	}
	if p.Does == "hang" && o.lengthens(l) && o.hangs() {
		return nil // told at the fitting, which comes before
	}
	sized.Pass = &p
	act, err := o.shelf.Act(p.Does)
	if err != nil {
		return fmt.Errorf("construction %s: %w", l.construction.Name, err)
	}
	fill := filler{style: o.style, names: o.names(l), sizes: l.sizes()}
	text, missing := fill.fill(p.Text)
	good, missing2 := fill.fill(p.Good)
	if missing += missing2; missing != "" {
		return fmt.Errorf("construction %s: its words ask for {%s}, which it does not size", l.construction.Name, missing)
	}
	n := op{line: i, strip: p.On == "strip", closing: p.After == "closing" && l.flat, layers: l.construction.Layers, act: *act}
	n.ID = l.name + "." + strconv.Itoa(sized.Number)
	n.Does, n.Part, n.Seam, n.Pass = p.Does, l.part(), l.name, sized.Number
	n.Text, n.Good, n.Closing = text+o.withGrain(i, l, act)+o.inRow(l, act)+o.leftOpen(i, l, sized, act)+o.aboveHem(i, l), good, n.closing
	if l.steadied != nil && p.Does == "fuse" {
		n.glue = l.steadied.HeatDots
	}
	n.row = rowOf(sized.Pass, o.crossed[i].plies)
	if n.strip {
		n.row.Layers = 2 // strip on strip
	}
	n.cloths = []seams.Cloth{l.cloth}
	if l.appliedRole != l.role {
		n.cloths = append(n.cloths, l.applied)
	}
	if n.strip {
		n.cloths = []seams.Cloth{l.applied}
	}
	n.Length = l.length * max(p.Rows, 1) * float64(l.copies)
	if run, ok := l.sized.Size(p.Run); ok {
		n.Length = run * max(p.Rows, 1) * float64(l.copies)
	}
	if n.strip && l.strip != nil {
		n.Length = l.strip.CutLength * float64(l.copies)
	}
	if err := o.place(&n, sized, l); err != nil {
		return err
	}
	n.Text += o.overCrossing(i, &n)
	o.time(&n)
	o.span[i] = append(o.span[i], len(o.ops))
	o.ops = append(o.ops, n)
	return nil
}

// place finds the station and its setting.
func (o *operator) place(n *op, p seams.SizedPass, l *line) error {
	colour := clothRole(o.cloths, l.role).thread
	if p.Pass.Thread == "applied" || n.strip {
		colour = clothRole(o.cloths, l.appliedRole).thread
	}
	return o.settle(n, p.Pass.Stitch, p.StitchMM, p.Pass.Foot, colour)
}

// settle decides where an operation is done and how the station is set for it.
func (o *operator) settle(n *op, stitch string, stitchMM float64, foot, colour string) error {
	switch n.act.Station {
	case "iron":
		n.station = o.room.at(ironStation)
		if n.station < 0 {
			n.station = o.room.at(tableStation)
			n.Text += " There is no iron in the room: finger-press, or use a smooth wooden edge."
		} else {
			n.Setting.HeatDots, n.Setting.Steam = o.heat(n.cloths)
			if n.glue > 0 {
				n.Setting.HeatDots = min(n.Setting.HeatDots, n.glue)
			}
			if n.Does == "press" {
				how, steam, err := o.pressed(n)
				if err != nil {
					return err
				}
				n.Pressed, n.Setting.Steam = how, steam
				n.Text += how.words(n.cloths[0])
			}
		}
	case "machine", "hand":
		st, err := o.shelf.Stitch(stitch)
		if err != nil {
			return fmt.Errorf("%s: %w", n.ID, err)
		}
		n.station = o.room.takes(stitch, foot, height(n.cloths, max(n.row.Layers, 1)))
		if n.station < 0 {
			return &CannotError{About: n.Part, Why: []string{"nothing in the room forms stitch " + stitch}}
		}
		n.Setting.Stitch, n.Setting.Thread = st.Name, colour
		if st.Bobbins > 0 {
			n.Setting.Bobbin = colour
		}
		if st.Loopers > 0 {
			n.Setting.Loopers = colour
		}
		o.loop(n, st)
		if n.row.Topstitch {
			kind, special, err := o.threadKind(n)
			if err != nil {
				return err
			}
			if special {
				n.Setting.Thread += topstitching
				n.Text += fmt.Sprintf(" Thread the needle with %s; the bobbin keeps sewing thread.", lowerFirst(kind.Title))
			}
		}
		if st.Hand {
			n.Setting.StitchMM = stitchMM
			hand, err := o.handNeedle(n)
			if err != nil {
				return err
			}
			n.Setting.Needle = hand.Words()
			break
		}
		needle, err := o.needle(n.cloths, n.row)
		if err != nil {
			return err
		}
		if stitchMM == 0 {
			stitchMM = needle.Stitch
		}
		m := o.room.stations[n.station].machine
		if foot == "" && len(m.Feet) > 0 {
			foot = m.Feet[0]
		}
		n.Setting.Needle, n.Setting.StitchMM, n.Setting.Foot = needleWords(needle), stitchMM, foot
	default:
		n.station = o.room.at(tableStation)
	}
	n.Station = o.room.stations[n.station].Name
	return nil
}

// heat is the lowest limit of the cloths in hand: an iron safe for one and not
// for the other is not safe.
func (o *operator) heat(cloths []seams.Cloth) (dots int, steam bool) {
	dots, steam = o.room.maxDots, o.room.steam
	for _, c := range cloths {
		dots, steam = min(dots, c.HeatDots), steam && c.Steam
	}
	return dots, steam
}

// needle is the one for the row and the cloth in hand that asks for the thicker blade.
func (o *operator) needle(cloths []seams.Cloth, row seams.Row) (*seams.NeedleRule, error) {
	var best *seams.NeedleRule
	for _, c := range cloths {
		r, err := o.shelf.NeedleForRow(o.factsOf(c), plainly(row))
		if err != nil {
			return nil, err
		}
		if best == nil || r.NM > best.NM {
			best = r
		}
	}
	return best, nil
}

// handNeedle is the one for the stitches and the cloth in hand that asks for the
// coarser needle.
func (o *operator) handNeedle(n *op) (*seams.HandNeedle, error) {
	row := n.row
	row.Stitch, row.Layers, row.Basting = n.Setting.Stitch, max(row.Layers, 1), n.Does == "baste"
	var best *seams.HandNeedle
	for _, c := range n.cloths {
		h, err := o.shelf.HandNeedleFor(o.factsOf(c), row)
		if err != nil {
			return nil, err
		}
		if best == nil || h.Size < best.Size {
			best = h
		}
	}
	return best, nil
}

// plainly is the row, or a plain one of two plies where none is told of.
func plainly(row seams.Row) seams.Row {
	if row == (seams.Row{}) {
		return seams.Row{Layers: 2, Stitch: "301"}
	}
	return row
}

func needleWords(n *seams.NeedleRule) string {
	if n.Apart > 0 {
		return fmt.Sprintf("%s %.1f/%d", n.Point, n.Apart, n.NM)
	}
	return fmt.Sprintf("%d/%d %s", n.NM, n.US, n.Point)
}

// time gives the operation its minutes, for every copy of every garment.
func (o *operator) time(n *op) {
	copies := 1
	if n.line >= 0 {
		copies = o.lines[n.line].copies
	}
	length := n.Length / float64(copies)
	one, basis := seams.ActMinutes(n.act, length, n.cloths[0])
	stitching := 0.0
	if m := o.room.stations[n.station]; n.act.Station == "machine" && m.Kind == "machine" {
		stitching = seams.SewingMinutes(length, n.Setting.StitchMM, m.machine.Speed)
		basis += fmt.Sprintf("; and the stitches at %.0f a minute", m.machine.Speed)
	}
	one += stitching
	if w, ok := o.room.watched[n.act.Name]; ok {
		one *= w.times
		basis = w.basis + " (" + basis + ")"
	}
	n.stitching = stitching * float64(copies*o.quantity)
	n.Minutes, n.Basis = one*float64(copies*o.quantity), basis
}

// names are the words that a construction's text may ask for.
func (o *operator) names(l *line) map[string]string {
	m := map[string]string{"edge": l.title, "strip": "strip", "caught": l.caught()}
	if l.taped != nil {
		m["tape_name"] = lowerFirst(l.taped.MaterialTitle)
	}
	if l.strip != nil {
		m["strip"] = lowerFirst(l.strip.Title)
		m["strips"] = strconv.Itoa(l.strip.Lengths)
	}
	if l.work == treating && len(l.own) > 0 {
		m["strip"] = l.kind
	}
	switch l.work {
	case joining:
		m["a"] = o.pieceTitle(l.join.A[0].Piece)
		m["b"] = o.pieceTitle(l.join.B[0].Piece)
		switch {
		case m["a"] == m["b"] && len(l.join.A) > 1:
			m["a"], m["b"] = "left half", "right half"
		case m["a"] == m["b"]:
			m["b"] = "other " + m["b"]
		}
	case onePiece, setIn, along:
		m["a"], m["b"] = o.pieceTitle(l.pieces[0]), o.pieceTitle(l.pieces[0])
		if l.kind == "gathers" {
			var titles []string
			for _, p := range l.pieces {
				titles = append(titles, o.pieceTitle(p))
			}
			m["a"], m["ratio"] = listWords(titles, "and"), l.ratio()
		}
		if l.detail != nil {
			m["press"] = l.detail.Press
		}
	}
	return m
}

func (o *operator) pieceTitle(name string) string {
	i := slices.IndexFunc(o.pieces, func(p Piece) bool { return p.Name == name })
	if i < 0 {
		return name
	}
	return lowerFirst(o.pieces[i].Title)
}

// sizes are the widths that the words may ask for.
func (l *line) sizes() map[string]float64 {
	m := map[string]float64{
		"allowance": l.sized.Allowance, "allowance_b": l.sized.AllowanceB, "finished": l.sized.Finished,
		"length": l.length,
	}
	if l.construction.Strip != nil {
		m["strip_width"], m["strip_ends"] = l.sized.Strip.Width, l.sized.Strip.Ends
	}
	if l.strip != nil {
		m["strip_length"] = l.strip.CutLength
	}
	if l.construction.Elastic != nil {
		m["elastic_width"], m["elastic_length"] = l.sized.Elastic.Width, l.sized.Elastic.Length
	}
	if l.kind == "dart" {
		m["dart_width"], m["dart_length"] = float64(l.detail.Width), float64(l.detail.Length)
	}
	for _, s := range l.sized.Sizes {
		m[s.Name] = s.MM
	}
	return m
}

// part is what is in hand, in words.
func (l *line) part() string {
	switch {
	case l.copies == 2:
		return "both " + plural(l.title)
	case l.copies > 2:
		return fmt.Sprintf("all %d %s", l.copies, plural(l.title))
	}
	return l.title
}
