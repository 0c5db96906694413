package main

import (
	"context"
	"strings"

	"github.com/spf13/cobra"

	"bodkin/process"
	"bodkin/sheets"
)

func shareCommand(s streams) *cobra.Command {
	var output string
	cmd := &cobra.Command{
		Use:   "share JOB [-o FILE]",
		Short: "Share the work of a job out among the people of the workroom",
		Long: `Share the work of a job out among the people whom the workroom names, the maker
first: who does what at which machine when, what is handed over to whom, and
what one more person or machine would change. Every person gets a bench sheet.
The ending of the output file decides its form as it does for plan. Without -o
the sheets go to standard output as Markdown.

A person of the workroom has a name, skills with levels (1 learning, 2 sure, 3
an old hand), a pace and hours:

  people:
    - {name: Ada, can: {press: 3, cut: 3, pin: 3, straight: 3, curves: 3, delicate: 3,
       hand: 3, fitting: 3}, from: "9:00", until: "17:00"}
    - {name: Bea, can: {press: 2, pin: 2, straight: 1}, pace: 1.5, from: "9:00", until: "11:00"}`,
		Example: `  bodkin share coat.yaml --workroom hall.yaml
  bodkin share coat.yaml -o benches.pdf`,
		DisableFlagsInUseLine: true,
		Args:                  wants(1, "JOB"),
		RunE: func(cmd *cobra.Command, args []string) error {
			set, err := loadSettings(cmd.Flags())
			if err != nil {
				return err
			}
			if _, err := formOf(output); err != nil {
				return err
			}
			g, err := gather(cmd.Context(), s, set, args[0])
			if err != nil {
				return err
			}
			if len(g.Workroom.People) == 0 {
				return wrong("name them in its file under people; bodkin share --help shows how", "the workroom names no people to share the work among")
			}
			if err := ready(output); err != nil {
				return err
			}
			share, err := g.shared(cmd.Context(), set)
			if err != nil {
				return err
			}
			p := document{compose: func(at string) sheets.Sheet { return sheets.ComposeShare(share, sheets.Options{FiguresAt: at}) }, value: share, head: share.Garment}
			return g.unprintable(p.write(s, set, output))
		},
		ValidArgsFunction: completeJob,
	}
	cmd.Flags().StringVarP(&output, "output", "o", "", "`FILE` to write; its ending is the form: "+strings.Join(endings(), ", "))
	addSettings(cmd.Flags(), "workroom", "shelf", "units", "paper", "type-size", "within")
	completeSettings(cmd)
	complete(cmd, "output", completeOutput)
	return cmd
}

// shareNodes is the work of the search for a share: about a second.
const shareNodes = 8000

// shared works out the share. Those who ask for no time get a quick one.
func (g *gathered) shared(ctx context.Context, set settings) (*process.Share, error) {
	nodes := shareNodes
	search, cancel := context.WithTimeout(ctx, set.within)
	defer cancel()
	if set.within == 0 {
		nodes, search = 1, ctx
	}
	share, err := process.ShareOut(search, g.Input, nodes)
	return share, g.placed(err)
}
