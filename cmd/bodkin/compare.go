package main

import (
	"bytes"
	"fmt"
	"math"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"bodkin/process"
	"bodkin/seams/form"
)

// variant is what is changed of a job and its room for comparison.
type variant struct{ with, without, cloth, thread []string }

func compareCommand(s streams) *cobra.Command {
	var v variant
	var asJSON bool
	cmd := &cobra.Command{
		Use:   "compare JOB",
		Short: "Set a plan beside one with another machine, cloth or thread",
		Long: `Compare plans a job twice: as it is, and with the machines, cloths or threads
changed as the flags say. It tells which seams would be sewn in another way and
why, the minutes of sewing and of change, the thread and the steps: what it would
save to borrow a machine, or to sew everything in one colour. The demo is
planned where JOB is demo.`,
		Example: `  bodkin compare coat.yaml --with overlocker-4
  bodkin compare coat.yaml --without zigzag-machine --json
  bodkin compare demo --cloth main=cotton-lawn --thread binding="reed green"`,
		DisableFlagsInUseLine: true,
		Args:                  wants(1, "JOB"),
		RunE: func(cmd *cobra.Command, args []string) error {
			set, err := loadSettings(cmd.Flags())
			if err != nil {
				return err
			}
			if len(v.with)+len(v.without)+len(v.cloth)+len(v.thread) == 0 {
				return wrong("write --with overlocker-4, or another of its flags", "compare needs something to change")
			}
			g, err := gather(cmd.Context(), s, set, demoOr(args[0]))
			if err != nil {
				return err
			}
			other := *g
			if err := v.apply(&other); err != nil {
				return err
			}
			before, err := g.work(cmd.Context(), s, set)
			if err != nil {
				return err
			}
			after, err := other.work(cmd.Context(), s, set)
			if err != nil {
				return err
			}
			c := process.Compare(before, after)
			if asJSON {
				var out bytes.Buffer
				err := writeJSON(&out, c)
				fmt.Fprint(s.out, out.String())
				return err
			}
			fmt.Fprint(s.out, sideBySide(c))
			return nil
		},
		ValidArgsFunction: completeJob,
	}
	f := cmd.Flags()
	f.StringArrayVar(&v.with, "with", nil, "a `MACHINE` more in the room; may be given again")
	f.StringArrayVar(&v.without, "without", nil, "a `MACHINE` of the room less; may be given again")
	f.StringArrayVar(&v.cloth, "cloth", nil, "another cloth, as `ROLE=CLOTH`, such as main=cotton-lawn")
	f.StringArrayVar(&v.thread, "thread", nil, "another thread, as `ROLE=COLOUR`, or a colour for everything")
	f.BoolVar(&asJSON, "json", false, "write the comparison as JSON")
	addSettings(f, "workroom", "shelf", "units", "within")
	completeSettings(cmd)
	for _, n := range []string{"with", "without", "cloth", "thread"} {
		complete(cmd, n, words(nil))
	}
	return cmd
}

// apply changes the job and the room, and leaves what they were taken from as
// it is.
func (v variant) apply(g *gathered) error {
	job, room := *g.Job, *g.Workroom
	job.Cloth, room.Machines = slices.Clone(job.Cloth), slices.Clone(room.Machines)
	g.Job, g.Workroom = &job, &room
	for _, name := range v.without {
		i := slices.IndexFunc(room.Machines, func(m process.RoomMachine) bool { return m.Is.Value == name })
		if i < 0 {
			var names []string
			for _, m := range room.Machines {
				names = append(names, m.Is.Value)
			}
			return unknown(name, names, "in the room stand "+strings.Join(names, ", "), "--without %s: no such machine stands in the room", name)
		}
		room.Machines = slices.Delete(room.Machines, i, i+1)
	}
	for _, name := range v.with {
		if _, err := g.Shelf.Machine(name); err != nil {
			var names []string
			for _, m := range g.Shelf.Machines {
				names = append(names, m.Name)
			}
			return unknown(name, names, "bodkin list machines shows what there is", "--with %s: no such machine on the shelf", name)
		}
		room.Machines = append(room.Machines, process.RoomMachine{Is: form.Text{Value: name}})
	}
	return v.dress(g.Job, g)
}

// dress changes cloths and threads.
func (v variant) dress(job *process.Job, g *gathered) error {
	var roles []string
	for _, r := range g.Garment.Roles() {
		roles = append(roles, r.Name)
	}
	at := func(flag, role string) (int, error) {
		i := slices.IndexFunc(job.Cloth, func(p form.Pair[process.JobCloth]) bool { return p.Key.Value == role })
		switch {
		case !slices.Contains(roles, role):
			return 0, unknown(role, roles, "the garment's cloths are "+strings.Join(roles, ", "), "--%s: the garment has no cloth called %q", flag, role)
		case i < 0:
			job.Cloth = append(job.Cloth, form.Pair[process.JobCloth]{Key: form.Text{Value: role}})
			return len(job.Cloth) - 1, nil
		}
		return i, nil
	}
	for _, c := range v.cloth {
		role, name, ok := strings.Cut(c, "=")
		if !ok {
			return wrong("write it as --cloth main=cotton-lawn", "--cloth cannot be %q", c)
		}
		if _, err := g.Shelf.Cloth(name); err != nil {
			var names []string
			for _, x := range g.Shelf.Cloths {
				names = append(names, x.Name)
			}
			return unknown(name, names, "bodkin list cloth shows what there is", "--cloth %s: no such cloth on the shelf", c)
		}
		i, err := at("cloth", role)
		if err != nil {
			return err
		}
		old := job.Cloth[i].Value
		job.Cloth[i].Value = process.JobCloth{Is: form.Text{Value: name}, Colour: old.Colour, Thread: old.Thread, Width: old.Width}
	}
	for _, t := range v.thread {
		role, colour, one := strings.Cut(t, "=")
		if !one {
			for i := range job.Cloth {
				job.Cloth[i].Value.Thread = t
			}
			continue
		}
		i, err := at("thread", role)
		if err != nil {
			return err
		}
		job.Cloth[i].Value.Thread = colour
	}
	return nil
}

// sideBySide is a comparison as Markdown that reads well in a terminal too.
func sideBySide(c process.Comparison) string {
	var b strings.Builder
	if c.Before.Title != c.After.Title {
		b.WriteString(wrapped("As it is in "+c.Before.Title+"; changed to "+c.After.Title+".", "", "") + "\n")
	}
	rows := [][3]string{{"", "as it is", "changed"}}
	add := func(what, pattern string, x, y any) {
		rows = append(rows, [3]string{what, fmt.Sprintf(pattern, x), fmt.Sprintf(pattern, y)})
	}
	add("Minutes of sewing", "%.0f", c.Before.SewMinutes, c.After.SewMinutes)
	add("Minutes of change", "%.1f", c.Before.ChangeMinutes, c.After.ChangeMinutes)
	add("Changes of thread", "%d", c.Before.ThreadChanges, c.After.ThreadChanges)
	add("Moves from place to place", "%d", c.Before.StationMoves, c.After.StationMoves)
	add("Metres of thread", "%.0f", c.Before.ThreadMetres, c.After.ThreadMetres)
	add("Operations", "%d", c.Before.Operations, c.After.Operations)
	add("Steps", "%d", c.Before.Steps, c.After.Steps)
	var wide [3]int
	for _, r := range rows {
		for k, cell := range r {
			wide[k] = max(wide[k], len([]rune(cell)))
		}
	}
	for i, r := range rows {
		fmt.Fprintf(&b, "| %-*s | %-*s | %-*s |\n", wide[0], r[0], wide[1], r[1], wide[2], r[2])
		if i == 0 {
			fmt.Fprintf(&b, "| %s | %s | %s |\n", strings.Repeat("-", wide[0]), strings.Repeat("-", wide[1]), strings.Repeat("-", wide[2]))
		}
	}
	b.WriteString("\n")
	for _, s := range c.Seams {
		line := fmt.Sprintf("**%s**: %s instead of %s, %s", s.Title, orNone(s.After), orNone(s.Before), saved(s.Minutes))
		if len(s.Because) > 0 {
			line += ", because " + strings.Join(s.Because, "; ")
		}
		b.WriteString(wrapped(line+".", "- ", "  "))
	}
	if len(c.Seams) == 0 {
		b.WriteString("No seam is sewn in another way.\n")
	}
	b.WriteString("\n" + wrapped(fmt.Sprintf("In all it takes %s: sewing %s, changes %s. Minutes are estimates.", saved(c.Minutes),
		saved(c.Before.SewMinutes-c.After.SewMinutes), saved(c.Before.ChangeMinutes-c.After.ChangeMinutes)), "", ""))
	if !c.Before.Proved || !c.After.Proved {
		b.WriteString(wrapped("One of the orders is not proved to be the best, so the minutes of change may differ by a little.", "", ""))
	}
	return b.String()
}

func orNone(construction string) string {
	if construction == "" {
		return "none"
	}
	return construction
}

// saved says how many minutes are saved or lost.
func saved(minutes float64) string {
	switch m := math.Round(minutes*10) / 10; {
	case m > 0:
		return fmt.Sprintf("%.1f min less", m)
	case m < 0:
		return fmt.Sprintf("%.1f min more", -m)
	}
	return "as long as before"
}
