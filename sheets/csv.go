package sheets

import (
	"bytes"
	"encoding/csv"
	"strconv"
	"strings"

	"bodkin/process"
)

// OperationsCSV is a row for each operation in planned order, with its step and
// setting, by RFC 4180 with a head. Lengths are mm, times minutes.
func OperationsCSV(p *process.Plan) []byte { return rowsOf(operationRows(p)) }

func operationRows(p *process.Plan) [][]string {
	step := map[string]int{}
	for _, s := range p.Steps {
		for _, id := range s.Operations {
			step[id] = s.Number
		}
	}
	rows := [][]string{{"step", "operation", "does", "part", "seam", "station", "thread", "bobbin", "loopers", "needle", "foot", "stitch", "stitch_mm",
		"heat_dots", "steam", "minutes", "after", "text", "looks_right"}}
	for _, o := range p.Operations {
		var after []string
		for _, a := range o.After {
			after = append(after, a.ID)
		}
		t := o.Setting
		rows = append(rows, []string{number(step[o.ID]), o.ID, o.Does, o.Part, o.Seam, o.Station, t.Thread, t.Bobbin, t.Loopers, t.Needle, t.Foot, t.Stitch,
			exact(t.StitchMM), number(t.HeatDots), strconv.FormatBool(t.Steam), exact(o.Minutes), strings.Join(after, " "), o.Text, o.Good})
	}
	return rows
}

// CutListCSV is a row for each piece, layer under a piece, strip, interfacing
// and elastic to cut, by RFC 4180 with a head. Sizes are mm of the cut thing,
// allowances included, and of a piece at its seam lines; the size is 1 for the job's own and goes on with its
// further ones.
func CutListCSV(p *process.Plan) []byte { return rowsOf(cutRows(p)) }

func cutRows(p *process.Plan) [][]string {
	rows := [][]string{{"kind", "name", "title", "material", "count", "how", "width_mm", "length_mm", "size", "net_width_mm", "net_length_mm"}}
	under := map[string]bool{} // roles of cloths that have another beneath
	for _, c := range p.Cloths {
		under[c.Role] = c.Under != nil
	}
	size := 0
	cut := func(pieces []process.Piece, strips []process.Strip, interfacing []process.Interfacing, notions []process.Notion) {
		size++
		var net [2]string // of a piece
		add := func(cells ...string) { rows = append(rows, append(cells, number(size), net[0], net[1])) }
		for _, q := range pieces {
			net = [2]string{exact(q.NetWidth), exact(q.NetHeight)}
			add("piece", q.Name, q.Title, q.Cloth, number(q.Count), q.Cut, exact(q.Width), exact(q.Height))
			if under[q.Cloth] {
				add("under layer", q.Name, q.Title, q.Cloth, number(q.Count), q.Cut, exact(q.Width), exact(q.Height))
			}
		}
		net = [2]string{}
		for _, s := range strips {
			add("strip", s.Name, s.Title, s.Cloth, number(s.Lengths*s.Count), s.On, exact(s.CutWidth), exact(s.EachLength))
		}
		for _, f := range interfacing {
			how := f.Part
			if f.On != "" {
				how = f.On
			}
			add("interfacing", f.Name, f.Title, f.Material, number(f.Count), how, exact(f.Cut[0]), exact(f.Cut[1]))
		}
		for _, n := range notions {
			add("notion", n.Name, n.Title, "", number(n.Count), "", exact(n.Width), exact(n.Length))
		}
	}
	cut(p.Pieces, p.Strips, p.Interfacing, p.Notions)
	for _, s := range p.Also {
		cut(s.Pieces, s.Strips, s.Interfacing, s.Notions)
	}
	return rows
}

// ThreadCSV is a row for each colour of thread, all garments and waste
// included, by RFC 4180 with a head. Lengths are metres, sizes tex.
func ThreadCSV(p *process.Plan) []byte {
	rows := [][]string{{"colour", "kind", "tex", "needle_m", "bobbin_and_looper_m", "metres", "bobbins", "seams"}}
	for _, t := range p.Thread {
		rows = append(rows, []string{t.Colour, t.Kind, exact(t.Tex), exact(t.NeedleM), exact(t.LooperM), exact(t.Metres), number(t.Bobbins), strings.Join(t.ForSeams, " ")})
	}
	return rowsOf(rows)
}

// exact is a number to the thousandth.
func exact(v float64) string {
	s := strconv.FormatFloat(v, 'f', 3, 64)
	return strings.TrimSuffix(strings.TrimRight(s, "0"), ".")
}

func rowsOf(rows [][]string) []byte {
	var out bytes.Buffer
	w := csv.NewWriter(&out)
	w.UseCRLF = true
	_ = w.WriteAll(rows) // fails only when its writer does, and a buffer does not
	return out.Bytes()
}
