package main

import (
	"fmt"
	"strconv"
	"strings"

	"bodkin/process"
)

// stepNumbers reads which steps of a plan a sheet is to tell: numbers and ranges
// with commas between. Empty means all, as none.
func stepNumbers(plan *process.Plan, list string) ([]int, error) {
	if list == "" {
		return nil, nil
	}
	var out []int
	for part := range strings.SplitSeq(list, ",") {
		from, to, ranged := strings.Cut(strings.TrimSpace(part), "-")
		if !ranged {
			to = from
		}
		a, errA := strconv.Atoi(strings.TrimSpace(from))
		b, errB := strconv.Atoi(strings.TrimSpace(to))
		if errA != nil || errB != nil {
			return nil, wrong("write steps such as 3, 3-7 or 1,3-7", "--steps cannot be %q", list)
		}
		if a < 1 || b > len(plan.Steps) || a > b {
			return nil, wrong(fmt.Sprintf("the steps run from 1 to %d", len(plan.Steps)), "--steps names steps %s", part)
		}
		for n := a; n <= b; n++ {
			out = append(out, n)
		}
	}
	return out, nil
}
