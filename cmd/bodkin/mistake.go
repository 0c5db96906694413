package main

import (
	"errors"
	"fmt"
	"io/fs"
	"strings"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"bodkin/seams/form"
)

// mistake is something that went wrong outside of any file's text: what, the
// nearest right word, and how to mend it, each on a line of its own.
type mistake struct {
	what, nearest, mend string
	code                int // the exit code
}

func (m mistake) Error() string {
	s := m.what
	if m.nearest != "" {
		s += fmt.Sprintf("\n  did you mean %q?", m.nearest)
	}
	if m.mend != "" {
		s += "\n  " + m.mend
	}
	return s
}

// wrong says that the input is wrong.
func wrong(mend, format string, args ...any) error {
	return mistake{what: fmt.Sprintf(format, args...), mend: mend, code: exitInput}
}

// cannot says that the input was right, but the work could not be done.
func cannot(mend, format string, args ...any) error {
	return mistake{what: fmt.Sprintf(format, args...), mend: mend, code: exitCouldNot}
}

// unknown says that a word is none of those it could be.
func unknown(word string, among []string, mend, format string, args ...any) error {
	return mistake{what: fmt.Sprintf(format, args...), nearest: form.Nearest(word, among), mend: mend, code: exitInput}
}

// plainCause is the cause of a file error without the name, which the message
// has already, and without the name of the system call.
func plainCause(err error) string {
	if e, ok := errors.AsType[*fs.PathError](err); ok {
		return e.Err.Error()
	}
	return err.Error()
}

// wants checks the number of arguments. The names are those of the usage line,
// least of them needed.
func wants(least int, names ...string) cobra.PositionalArgs {
	return func(cmd *cobra.Command, args []string) error {
		usage := "usage: " + cmd.UseLine()
		if len(args) < least {
			return wrong(usage, "%s needs a %s", cmd.Name(), strings.Join(names[len(args):least], " and a "))
		}
		if len(args) > len(names) {
			return wrong(usage, "%s cannot take %q as well", cmd.Name(), args[len(names)])
		}
		return nil
	}
}

// noSuchCommand is for the root, which is handed every word that is no command.
func noSuchCommand(cmd *cobra.Command, args []string) error {
	if len(args) == 0 {
		return nil
	}
	return unknown(args[0], commandNames(cmd.Root()), "bodkin --help shows the commands", "no command %q", args[0])
}

func commandNames(root *cobra.Command) []string {
	var names []string
	for _, c := range root.Commands() {
		if c.IsAvailableCommand() {
			names = append(names, c.Name())
		}
	}
	return names
}

// flagError puts what the flag parser says into our words.
func flagError(cmd *cobra.Command, err error) error {
	mend := cmd.CommandPath() + " --help shows the flags"
	if e, ok := errors.AsType[*pflag.NotExistError](err); ok {
		if e.GetSpecifiedShortnames() != "" {
			return wrong(mend, "no flag -%s", e.GetSpecifiedName())
		}
		var names []string
		cmd.Flags().VisitAll(func(f *pflag.Flag) { names = append(names, "--"+f.Name) })
		name := "--" + e.GetSpecifiedName()
		return unknown(name, names, mend, "no flag %s", name)
	}
	if e, ok := errors.AsType[*pflag.ValueRequiredError](err); ok {
		value, _ := pflag.UnquoteUsage(e.GetFlag())
		return wrong(mend, "--%s needs a %s after it", e.GetFlag().Name, value)
	}
	if e, ok := errors.AsType[*pflag.InvalidValueError](err); ok {
		return wrong(mend, "--%s cannot be %q", e.GetFlag().Name, e.GetValue())
	}
	return wrong(mend, "%v", err)
}
