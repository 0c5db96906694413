package main

import (
	"runtime/debug"

	"github.com/spf13/cobra"
)

// rootCommand is the tree of commands. started becomes true once the command
// line has been understood and a command runs.
func rootCommand(s streams) (root *cobra.Command, started *bool) {
	root = &cobra.Command{
		Use:   "bodkin [command]",
		Short: "Plan the making of a garment and print its step sheet",
		Long: `bodkin works out how a garment is made: the construction of every seam that
this cloth and these machines allow, the allowance of every edge, the strips and
interfacings to cut, the thread, and the order of steps with the fewest minutes
of change. It explains every choice and prints it all as a sheet for the bench.`,
		Example: `  bodkin plan -o sheet.pdf                plan the demo and print its sheet
  bodkin start open-jacket > coat.yaml    a job to change to your own
  bodkin plan coat.yaml -o coat.pdf       the sheet for it
  bodkin why coat.yaml side               why the side seam is sewn as it is`,
		Version:               version(),
		Args:                  noSuchCommand,
		DisableFlagsInUseLine: true,
		SilenceErrors:         true,
		SilenceUsage:          true,
		RunE:                  func(cmd *cobra.Command, _ []string) error { return cmd.Help() },
	}
	root.SetVersionTemplate("bodkin {{.Version}}\n")
	root.SetFlagErrorFunc(flagError)
	root.SetUsageFunc(usage)
	root.SetHelpCommand(helpCommand())
	root.AddCommand(planCommand(s), checkCommand(s), startCommand(s), listCommand(s), showCommand(s), whyCommand(s), compareCommand(s), sittingCommand(s), shareCommand(s), classCommand(s), schemaCommand(s))
	started = new(bool)
	for _, c := range append(root.Commands(), root) {
		work := c.RunE
		c.RunE = func(cmd *cobra.Command, args []string) error {
			*started = true
			return work(cmd, args)
		}
	}
	return root, started
}

func version() string {
	info, ok := debug.ReadBuildInfo()
	if !ok || info.Main.Version == "" || info.Main.Version == "(devel)" {
		return "development build"
	}
	return info.Main.Version
}
