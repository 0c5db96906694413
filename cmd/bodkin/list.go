package main

import (
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"bodkin/seams"
	"bodkin/seams/form"
)

func listCommand(s streams) *cobra.Command {
	var asJSON bool
	var only filter
	names := kindNames()
	half := (len(names) + 1) / 2 // two lines of them fit the page
	cmd := &cobra.Command{
		Use:   "list KIND",
		Short: "List what is on the shelf",
		Long: "List what is on the shelf. KIND is one of\n" + strings.Join(names[:half], ", ") + ",\n" + strings.Join(names[half:], ", ") + `.

Cloth can be narrowed by its sort. Seams can be narrowed by the cloth that they
are for, one by its name or a sort (those that suit most of it), and by a
machine that they use; so can needles, hand needles, thread and interfacing by
cloth, and stitches by machine. What is given together holds together.`,
		Example: `  bodkin list garments
  bodkin list cloth --sheer --json
  bodkin list seams --for knit --with overlocker
  bodkin list needles --for silk-georgette`,
		DisableFlagsInUseLine: true,
		Args:                  wants(1, "KIND"),
		RunE: func(cmd *cobra.Command, args []string) error {
			entries, err := entriesOf(cmd, args[0])
			if err != nil {
				return err
			}
			if entries, err = only.narrow(cmd, args[0], entries); err != nil {
				return err
			}
			if asJSON {
				return printEntries(s, entries)
			}
			t := table{}
			for _, e := range entries {
				own := ""
				if e.Own {
					own = "your own, " + e.Place.File
				}
				if e.Over != (form.Place{}) {
					own = "your own in the place of ours, " + e.Place.File
				}
				t.row(e.Name, e.Title, own)
			}
			if len(entries) == 0 {
				fmt.Fprintln(s.err, "bodkin: nothing on the shelf is all of that")
			}
			fmt.Fprint(s.out, t)
			return nil
		},
		ValidArgsFunction: completeKind(false),
	}
	cmd.Flags().BoolVar(&asJSON, "json", false, "write an array of objects with name, title, source and the whole entry")
	only.flags(cmd)
	addSettings(cmd.Flags(), "shelf")
	completeSettings(cmd)
	return cmd
}

func printEntries(s streams, entries []seams.Entry) error {
	list, err := objects(entries)
	if err != nil {
		return err
	}
	return printJSON(s, list)
}
