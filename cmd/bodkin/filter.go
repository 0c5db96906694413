package main

import (
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"bodkin/seams"
)

// filter is what list is narrowed by; all of it must hold.
type filter struct {
	sorts []string // of cloth, by the flags of their names
	cloth string   // --for: a cloth or a sort
	with  []string // machines, or words that their names open with
}

func (f *filter) flags(cmd *cobra.Command) {
	for _, sort := range seams.SortsOfCloth() {
		cmd.Flags().BoolFunc(sort, "of cloth: only what is "+sort, func(value string) error {
			if value == "true" {
				f.sorts = append(f.sorts, sort)
			}
			return nil
		})
	}
	cmd.Flags().StringVar(&f.cloth, "for", "", "only what suits this `CLOTH`: a cloth of the shelf, or one of "+strings.Join(seams.SortsOfCloth(), ", "))
	cmd.Flags().StringArrayVar(&f.with, "with", nil, "only what uses this `MACHINE`, or one whose name opens so; may be given again")
	complete(cmd, "for", func(cmd *cobra.Command, _ []string, _ string) ([]string, cobra.ShellCompDirective) {
		return append(seams.SortsOfCloth(), entryNames(cmd, "cloth")...), cobra.ShellCompDirectiveNoFileComp
	})
	complete(cmd, "with", func(cmd *cobra.Command, _ []string, _ string) ([]string, cobra.ShellCompDirective) {
		return entryNames(cmd, "machines"), cobra.ShellCompDirectiveNoFileComp
	})
}

func entryNames(cmd *cobra.Command, kind string) []string {
	entries, _ := entriesOf(cmd, kind) // where the shelf cannot be read nothing is offered
	var out []string
	for _, e := range entries {
		out = append(out, cobra.CompletionWithDesc(e.Name, e.Title))
	}
	return out
}

// narrow keeps the entries that the filter lets through.
func (f *filter) narrow(cmd *cobra.Command, kind string, entries []seams.Entry) ([]seams.Entry, error) {
	if err := f.check(kind); err != nil || (len(f.sorts) == 0 && f.cloth == "" && len(f.with) == 0) {
		return entries, err
	}
	shelf, err := loadShelf(cmd)
	if err != nil {
		return nil, err
	}
	n := narrowing{filter: f, shelf: shelf, kind: kind}
	if err := n.prepare(); err != nil {
		return nil, err
	}
	var out []seams.Entry
	for _, e := range entries {
		keep, err := n.keeps(e.Name)
		if err != nil {
			return nil, err
		}
		if keep {
			out = append(out, e)
		}
	}
	return out, nil
}

// check refuses a flag that says nothing about a kind.
func (f *filter) check(kind string) error {
	switch {
	case len(f.sorts) > 0 && kind != "cloth":
		return wrong("list cloth has it; for seams write --for "+f.sorts[0], "list %s has no --%s", kind, f.sorts[0])
	case f.cloth != "" && !slices.Contains([]string{"seams", "needles", "hand-needles", "thread", "interfacing"}, kind):
		return wrong("it is for seams, needles, hand-needles, thread and interfacing", "list %s has no --for", kind)
	case len(f.with) > 0 && !slices.Contains([]string{"seams", "stitches"}, kind):
		return wrong("it is for seams and stitches", "list %s has no --with", kind)
	}
	return nil
}

// narrowing is a filter at work on a kind.
type narrowing struct {
	*filter
	shelf   *seams.Shelf
	kind    string
	cloths  []seams.Cloth // that --for means
	forms   [][]string    // stitches that each --with forms
	ruledIn []string      // needles, threads and interfacings for the cloths
}

func (n *narrowing) prepare() error {
	for _, word := range n.with {
		var stitches, names []string
		for _, m := range n.shelf.Machines {
			names = append(names, m.Name)
			if m.Name == word || strings.HasPrefix(m.Name, word+"-") {
				stitches = append(stitches, m.Forms...)
			}
		}
		if len(stitches) == 0 {
			return unknown(word, names, "bodkin list machines shows what there is", "no machine %q on the shelf that forms stitches", word)
		}
		n.forms = append(n.forms, stitches)
	}
	if n.cloth == "" {
		return nil
	}
	known := seams.SortsOfCloth()
	for _, c := range n.shelf.Cloths {
		known = append(known, c.Name)
		if c.Name == n.cloth || c.OfSort(n.cloth) {
			n.cloths = append(n.cloths, c)
		}
	}
	if len(n.cloths) == 0 {
		return unknown(n.cloth, known, "write a cloth of the shelf, or one of "+strings.Join(seams.SortsOfCloth(), ", "), "no cloth and no sort of cloth is called %q", n.cloth)
	}
	return n.materials()
}

// materials finds the needles, threads or interfacings that the rules give to
// the cloths.
func (n *narrowing) materials() error {
	for _, c := range n.cloths {
		facts := seams.Facts{Cloth: c.Facts(), Applied: c.Facts(), Workroom: seams.WorkroomFacts{Iron: true, Steam: true}}
		switch n.kind {
		case "needles":
			r, err := n.shelf.NeedleFor(facts)
			if err != nil {
				return err
			}
			n.ruledIn = append(n.ruledIn, r.Name)
		case "hand-needles": // one to sew with and one to baste with
			for _, row := range []seams.Row{{Layers: 2, Stitch: "fell"}, {Layers: 2, Stitch: "205", Basting: true}} {
				r, err := n.shelf.HandNeedleFor(facts, row)
				if err != nil {
					return err
				}
				n.ruledIn = append(n.ruledIn, r.Name)
			}
		case "thread":
			r, err := n.shelf.ThreadFor(facts)
			if err != nil {
				return err
			}
			n.ruledIn = append(n.ruledIn, r.Name)
		case "interfacing":
			for _, weigh := range []func(seams.Facts) ([]seams.InterfacingVerdict, error){n.shelf.WeighInterfacings, n.shelf.WeighTapes} {
				verdicts, err := weigh(facts)
				if err != nil {
					return err
				}
				for _, v := range verdicts {
					if v.Allowed() {
						n.ruledIn = append(n.ruledIn, v.Interfacing.Name)
					}
				}
			}
		}
	}
	return nil
}

// keeps reports whether an entry is let through.
func (n *narrowing) keeps(name string) (bool, error) {
	if n.kind == "cloth" {
		c, err := n.shelf.Cloth(name)
		return err == nil && !slices.ContainsFunc(n.sorts, func(sort string) bool { return !c.OfSort(sort) }), err
	}
	uses := []string{name} // a stitch
	if n.kind == "seams" {
		c, err := n.shelf.Construction(name)
		if err != nil {
			return false, err
		}
		uses = c.Stitches
	}
	for _, forms := range n.forms {
		if !slices.ContainsFunc(uses, func(st string) bool { return slices.Contains(forms, st) }) {
			return false, nil
		}
	}
	switch {
	case n.cloth == "":
		return true, nil
	case n.kind != "seams":
		return slices.Contains(n.ruledIn, name), nil
	case slices.Contains(seams.SortsOfCloth(), n.cloth):
		return n.shelf.SuitsSort(name, n.cloth)
	}
	return n.shelf.Suits(name, n.cloths[0])
}
