package main

import (
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"bodkin/seams"
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
					return printJSON(s, []seams.Entry{e})
				}
				if e.Name == args[1] {
					fmt.Fprint(s.out, entryText(e))
					return nil
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

// entryText is an entry as a file of its own: a list of one, or a garment.
func entryText(e seams.Entry) string {
	from := "the shelf that comes with bodkin"
	if e.Own {
		from = "your own shelf"
	}
	head := fmt.Sprintf("# %s, from %s\n# %s\n", e.Title, from, e.Place)
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
