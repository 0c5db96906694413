package sheets

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"regexp"
	"testing"

	"bodkin/process"
)

// records are records by the grammar of RFC 4180, section 2: fields plain or in
// quotes with quotes doubled, lines that end in CR LF.
var records = regexp.MustCompile(`^(?:(?:"(?:[^"]|"")*"|[^",\r\n]*)(?:,(?:"(?:[^"]|"")*"|[^",\r\n]*))*\r\n)+$`)

func TestTablesKeepToRFC4180(t *testing.T) {
	p := fixture(t, "shell-top")
	p.Operations[0].Text = "a \"quoted\" word, a comma\nand a second line"
	p.Pieces[0].Title = `front, "left"`
	p.Thread[0].Colour = `red, "deep"`
	p.Cloths[0].Under = &process.Underlay{Name: "cotton-lawn", Title: "Cotton lawn"}
	for name, table := range map[string][]byte{"operations": OperationsCSV(p), "cut": CutListCSV(p), "thread": ThreadCSV(p)} {
		if !records.Match(table) {
			t.Errorf("%s is no file of RFC 4180:\n%s", name, table)
		}
	}
	rows, err := csv.NewReader(bytes.NewReader(ThreadCSV(p))).ReadAll()
	if err != nil || len(rows) != len(p.Thread)+1 || rows[1][0] != p.Thread[0].Colour || rows[1][5] != exact(p.Thread[0].Metres) {
		t.Errorf("thread reads back as %q, %v", rows, err)
	}
	cut, err := csv.NewReader(bytes.NewReader(CutListCSV(p))).ReadAll()
	if err != nil || cut[1][2] != p.Pieces[0].Title || cut[2][0] != "under layer" || cut[2][1] != p.Pieces[0].Name {
		t.Errorf("the cut list reads back as %q, %v", cut[:3], err)
	}
}

// The tables have a row for each thing of the plan, in its order, and read back
// what went in.
func TestTablesForOtherPrograms(t *testing.T) {
	for _, n := range plans(t) {
		ops, err := csv.NewReader(bytes.NewReader(OperationsCSV(n.plan))).ReadAll()
		if err != nil || len(ops) != len(n.plan.Operations)+1 {
			t.Fatalf("%s: %d rows, %v", n.name, len(ops), err)
		}
		last := 0
		for i, o := range n.plan.Operations {
			row := ops[i+1]
			step := 0
			if _, err := fmt.Sscan(row[0], &step); err != nil || step < last || step == 0 {
				t.Errorf("%s: %s stands in step %q after step %d", n.name, o.ID, row[0], last)
			}
			last = step
			if row[1] != o.ID || row[3] != o.Part || row[17] != o.Text || row[7] != o.Setting.Bobbin || row[8] != o.Setting.Loopers {
				t.Errorf("%s: row %q is not %s", n.name, row, o.ID)
			}
		}
		cut, err := csv.NewReader(bytes.NewReader(CutListCSV(n.plan))).ReadAll()
		want := 1 + len(n.plan.Pieces) + len(n.plan.Strips) + len(n.plan.Interfacing) + len(n.plan.Notions)
		for _, s := range n.plan.Also {
			want += len(s.Pieces) + len(s.Strips) + len(s.Interfacing) + len(s.Notions)
		}
		if err != nil || len(cut) != want || cut[len(cut)-1][8] != number(1+len(n.plan.Also)) {
			t.Fatalf("%s: %d rows, %v", n.name, len(cut), err)
		}
		for i, q := range n.plan.Pieces {
			var w float64
			if _, err := fmt.Sscan(cut[i+1][6], &w); err != nil || w < q.Width-0.001 || w > q.Width+0.001 {
				t.Errorf("%s: %s is %s wide, not %v", n.name, q.Name, cut[i+1][6], q.Width)
			}
			if net := cut[i+1][9:]; net[0] != exact(q.NetWidth) || net[1] != exact(q.NetHeight) {
				t.Errorf("%s: %s is %s at its seam lines, not %v × %v", n.name, q.Name, net, q.NetWidth, q.NetHeight)
			}
		}
	}
}
