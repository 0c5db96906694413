package sheets

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"testing"
)

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
			if row[1] != o.ID || row[3] != o.Part || row[15] != o.Text {
				t.Errorf("%s: row %q is not %s", n.name, row, o.ID)
			}
		}
		cut, err := csv.NewReader(bytes.NewReader(CutListCSV(n.plan))).ReadAll()
		if err != nil || len(cut) != 1+len(n.plan.Pieces)+len(n.plan.Strips)+len(n.plan.Interfacing) {
			t.Fatalf("%s: %d rows, %v", n.name, len(cut), err)
		}
		for i, q := range n.plan.Pieces {
			var w float64
			if _, err := fmt.Sscan(cut[i+1][6], &w); err != nil || w < q.Width-0.001 || w > q.Width+0.001 {
				t.Errorf("%s: %s is %s wide, not %v", n.name, q.Name, cut[i+1][6], q.Width)
			}
		}
	}
}
