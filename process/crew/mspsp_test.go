package crew_test

import (
	"fmt"
	"io"
	"regexp"
	"strconv"
	"strings"

	"bodkin/process/crew"
)

// readDZN reads a project with skilled workers in the form of the MSPSP
// library (K. Young, T. Feydy, A. Schutt, CP 2017).
func readDZN(r io.Reader) (crew.Problem, error) {
	data, err := io.ReadAll(r)
	if err != nil {
		return crew.Problem{}, err
	}
	text := regexp.MustCompile(`(?m)%.*$`).ReplaceAllString(string(data), "")
	values := map[string][]int64{}
	for _, entry := range strings.Split(text, ";") {
		name, rest, ok := strings.Cut(entry, "=")
		if !ok {
			continue
		}
		var v []int64
		for _, w := range regexp.MustCompile(`true|false|\d+`).FindAllString(rest, -1) {
			switch w {
			case "true":
				v = append(v, 1)
			case "false":
				v = append(v, 0)
			default:
				n, err := strconv.ParseInt(w, 10, 64)
				if err != nil {
					return crew.Problem{}, err
				}
				v = append(v, n)
			}
		}
		values[strings.TrimSpace(name)] = v
	}
	one := func(name string) int {
		if len(values[name]) != 1 {
			err = fmt.Errorf("no single %s", name)
			return 0
		}
		return int(values[name][0])
	}
	n, skills, workers, arcs := one("nActs"), one("nSkills"), one("nResources"), one("nPrecs")
	if err != nil {
		return crew.Problem{}, err
	}
	for name, want := range map[string]int{
		"dur": n, "sreq": n * skills, "mastery": workers * skills, "pred": arcs, "succ": arcs,
	} {
		if len(values[name]) != want {
			return crew.Problem{}, fmt.Errorf("%d values of %s, want %d", len(values[name]), name, want)
		}
	}
	p := grow(crew.Problem{}, n)
	for i := range n {
		p.Tasks[i].Time = values["dur"][i]
		for s := range skills {
			if c := values["sreq"][i*skills+s]; c > 0 {
				p.Tasks[i].Needs = append(p.Tasks[i].Needs, crew.Need{Skill: s, Count: int(c)})
			}
		}
	}
	for q := range workers {
		var person crew.Person
		for s := range skills {
			person.Skills = append(person.Skills, int(values["mastery"][q*skills+s]))
		}
		p.People = append(p.People, person)
	}
	for k := range arcs {
		s := values["succ"][k] - 1
		p.Tasks[s].After = append(p.Tasks[s].After, int(values["pred"][k]-1))
	}
	return p, nil
}
