package main

import (
	"fmt"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"bodkin/seams"
	"bodkin/seams/form"
	"bodkin/templates"
)

func showCommand(s streams) *cobra.Command {
	var asJSON bool
	cmd := &cobra.Command{
		Use:   "show KIND NAME",
		Short: "Show an entry of the shelf in full, with its source",
		Long: `Show an entry of the shelf in full, with its source, in the form that --shelf
reads: save it, change it, and name it as your own. A garment is shown in the
form that a job's make: reads by its path.`,
		Example: `  bodkin show seams french
  bodkin show cloth silk-georgette > mine.yaml
  bodkin list cloth --shelf mine.yaml`,
		DisableFlagsInUseLine: true,
		Args:                  wants(2, "KIND", "NAME"),
		RunE: func(cmd *cobra.Command, args []string) error {
			entries, err := entriesOf(cmd, args[0])
			if err != nil {
				return err
			}
			var names []string
			for _, e := range entries {
				if e.Name == args[1] && asJSON {
					return printEntries(s, []seams.Entry{e})
				}
				if e.Name == args[1] {
					about, err := ownCloth(cmd, e)
					if e.Kind == "garment" {
						about, err = namedSizes(e)
					}
					var differ string
					if err == nil && e.Kind != "garment" {
						differ, err = sourcesDiffer(e)
					}
					if err == nil {
						fmt.Fprint(s.out, about+entryText(e, differ))
					}
					return err
				}
				names = append(names, e.Name)
			}
			return unknown(args[1], names, "bodkin list "+args[0]+" shows what there is", "no %q among the %s", args[1], args[0])
		},
		ValidArgsFunction: completeKind(true),
	}
	cmd.Flags().BoolVar(&asJSON, "json", false, "write an array with the one object")
	addSettings(cmd.Flags(), "shelf")
	completeSettings(cmd)
	return cmd
}

// entryText is an entry as a file of its own: a list of one, or a garment. What
// sources disagree on stands at its head.
func entryText(e seams.Entry, differ string) string {
	from := "the shelf that comes with bodkin"
	if e.Own {
		from = "your own shelf"
	}
	if e.Over != (form.Place{}) {
		from += ", in the place of ours at " + e.Over.String()
	}
	head := fmt.Sprintf("# %s, from %s\n# %s\n", e.Title, from, e.Place) + differ
	if e.Kind == "garment" {
		return head + e.Text
	}
	var b strings.Builder
	indent := "- "
	for line := range strings.Lines(e.Text) {
		if strings.TrimSpace(line) != "" {
			b.WriteString(indent)
		}
		b.WriteString(line)
		indent = "  "
	}
	return head + b.String()
}

// sourcesDiffer tells, as comments, what sources disagree on.
func sourcesDiffer(e seams.Entry) (string, error) {
	list, err := e.Differences()
	var b strings.Builder
	for _, d := range list {
		var says []string
		for _, text := range d.Says {
			what, source, _ := strings.Cut(text, ": ")
			says = append(says, what+" ("+source+")")
		}
		b.WriteString(wrapped("sources differ on "+d.On+": "+strings.Join(says, "; "), "# ", "#   "))
	}
	return b.String(), err
}

// namedSizes tells, as comments, the named sizes that a garment can be made by, and
// what is to be measured beside them.
func namedSizes(e seams.Entry) (string, error) {
	g, err := templates.Parse(e.Place.File, []byte(e.Text))
	if err != nil {
		return "", err
	}
	list, err := templates.Sizes()
	if err != nil || g.Child {
		return "", err
	}
	names := map[string][]string{} // by what is to be measured beside them
	var order []string
	for _, s := range list {
		asks := g.Asks(s)
		if !slices.ContainsFunc(s.Measures.Keys(), func(m string) bool { return slices.Contains(g.Measures.Keys(), m) }) {
			continue
		}
		beside := strings.Join(asks, ", ")
		if names[beside] == nil {
			order = append(order, beside)
		}
		names[beside] = append(names[beside], s.Name)
	}
	var b strings.Builder
	for _, beside := range order {
		words := "named sizes: " + strings.Join(names[beside], ", ")
		if beside != "" {
			words += "; with " + beside + " measured"
		}
		b.WriteString(wrapped(words, "# ", "#   "))
	}
	return b.String(), nil
}

// ownCloth tells, as comments, what a cloth of the maker's own takes over from
// the one that it is like, and which it resembles; "" for anything else.
func ownCloth(cmd *cobra.Command, e seams.Entry) (string, error) {
	if e.Kind != "cloth" || !e.Own {
		return "", nil
	}
	shelf, err := loadShelf(cmd)
	if err != nil {
		return "", err
	}
	c, err := shelf.Cloth(e.Name)
	if err != nil {
		return "", err
	}
	var b strings.Builder
	if words := c.InferredWords(); words != "" {
		b.WriteString(wrapped(words, "# ", "#   "))
	}
	if like, how := shelf.Resembles(*c); like != nil {
		b.WriteString(wrapped("most like "+like.Name+": "+strings.Join(how, ", "), "# ", "#   "))
	}
	return b.String(), nil
}

// loadShelf is the shelf with the maker's own files.
func loadShelf(cmd *cobra.Command) (*seams.Shelf, error) {
	set, err := loadSettings(cmd.Flags())
	if err != nil {
		return nil, err
	}
	own, err := ownFiles(set.shelf)
	if err != nil {
		return nil, err
	}
	return seams.Load(own...)
}
