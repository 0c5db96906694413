package main

import (
	"fmt"
	"strings"

	"bodkin/process"
)

// whyOne is the function of that name, and for a seam also what would change
// the choice.
func (g *gathered) whyOne(plan *process.Plan, name string) (string, error) {
	text, err := whyOne(plan, name)
	if err != nil {
		return "", err
	}
	n, err := resolve(plan, name)
	if err != nil || n.seam == nil {
		return text, err
	}
	found, err := process.WhatIf(g.Input, n.seam.Name)
	if err != nil {
		return "", g.placed(err)
	}
	return text + otherwise(n.seam, found), nil
}

// otherwise is what would change the choice, a line each.
func otherwise(seam *process.Seam, found []process.Otherwise) string {
	if seam.Insisted {
		return ""
	}
	if len(found) == 0 {
		return wrapped("no machine of the shelf, no wish and no other cloth that was tried would change it", "", "  ")
	}
	var b strings.Builder
	b.WriteString("what would change it:\n")
	for _, f := range found {
		line := fmt.Sprintf("%s: %s, %s", f.If, f.Title, f.MinutesWords())
		if f.Because != "" {
			line += "; " + f.Because
		}
		b.WriteString(wrapped(line, "  → ", "    "))
	}
	return b.String()
}
