package main

import (
	"bytes"
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"bodkin/seams"
)

func listCommand(s streams) *cobra.Command {
	var asJSON bool
	cmd := &cobra.Command{
		Use:   "list KIND",
		Short: "List what is on the shelf",
		Long:  "List what is on the shelf. KIND is one of\n" + strings.Join(kindNames(), ", ") + ".",
		Example: `  bodkin list garments
  bodkin list cloth --json`,
		DisableFlagsInUseLine: true,
		Args:                  wants(1, "KIND"),
		RunE: func(cmd *cobra.Command, args []string) error {
			entries, err := entriesOf(cmd, args[0])
			if err != nil {
				return err
			}
			if asJSON {
				return printJSON(s, entries)
			}
			t := table{}
			for _, e := range entries {
				own := ""
				if e.Own {
					own = "your own, " + e.Place.File
				}
				t.row(e.Name, e.Title, own)
			}
			fmt.Fprint(s.out, t)
			return nil
		},
		ValidArgsFunction: completeKind(false),
	}
	cmd.Flags().BoolVar(&asJSON, "json", false, "write an array of objects with name, title, source and the whole entry")
	addSettings(cmd.Flags(), "shelf")
	completeSettings(cmd)
	return cmd
}

func printJSON(s streams, entries []seams.Entry) error {
	list, err := objects(entries)
	if err != nil {
		return err
	}
	var out bytes.Buffer
	if err := writeJSON(&out, list); err != nil {
		return err
	}
	_, _ = s.out.Write(out.Bytes()) // run tells of a failure
	return nil
}
