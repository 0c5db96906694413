package sheets

import (
	"math"
	"strconv"

	"bodkin/process"
	"bodkin/seams/length"
)

func number(n int) string { return strconv.Itoa(n) }

// decimal writes a plain number to the tenth, without a trailing zero.
func decimal(v float64) string {
	return strconv.FormatFloat(float64(tenth(v))/10, 'f', -1, 64)
}

// tenth is a number in whole tenths.
func tenth(v float64) int { return int(math.Round(v * 10)) }

// mm is a length of the plan as the sheet writes it.
func (c *composer) mm(v float64) inline { return plain(c.mmText(v)) }

func (c *composer) mmText(v float64) string { return length.Format(length.MM(v), c.style) }

// mmOr is mm, or the mark for nothing where the length is nothing.
func (c *composer) mmOr(v float64) inline {
	if v == 0 {
		return plain(c.say.none)
	}
	return c.mm(v)
}

// metres is a length of thread, rounded up to whole metres or yards: thread is
// not wound by the centimetre.
func (c *composer) metres(m float64) inline {
	unit := length.Metre
	if c.style == length.Inches {
		unit = length.Yard
	}
	whole := math.Ceil(m*float64(length.Metre)/float64(unit) - 1e-9)
	return plain(length.Long(length.MM(whole)*unit, c.style))
}

// toBuy is a length of cloth, rounded up to the tenth of a metre or eighth of a
// yard, as it is sold.
func (c *composer) toBuy(mm float64) inline {
	step := float64(length.Metre) / 10
	if c.style == length.Inches {
		step = float64(length.Yard) / 8
	}
	return plain(length.Long(length.MM(math.Ceil(mm/step-1e-9)*step), c.style))
}

// count is a number with its noun.
func (c *composer) count(n int, noun counted) inline {
	if n == 1 {
		return plain(noun.one)
	}
	return say(noun.many, values{"n": plain(number(n))})
}

// about is a time that is an estimate: whole minutes, hours where it is long.
func (c *composer) about(minutes float64) inline {
	w := c.say.counts
	whole := int(math.Round(minutes))
	switch {
	case whole < 1:
		return plain(w.underMinute)
	case whole < 60:
		return say(w.minutes, values{"n": plain(number(whole))})
	case whole%60 == 0:
		return say(w.hours, values{"h": plain(number(whole / 60))})
	}
	return say(w.hoursMinutes, values{"h": plain(number(whole / 60)), "n": plain(number(whole % 60))})
}

// minutes is a time that is compared with others: to the tenth of a minute.
func (c *composer) minutes(v float64) inline {
	return say(c.say.counts.minutes, values{"n": plain(decimal(v))})
}

// listed writes parts as a sentence does: a, b and c.
func (c *composer) listed(parts []inline) inline {
	if len(parts) < 2 {
		return joined("", parts...)
	}
	n := len(parts) - 1
	return joined(inline(c.say.list), parts[:n]...) + inline(c.say.last) + parts[n]
}

// measureText is a measure or a choice as it was used.
func (c *composer) measureText(m process.Measure) inline {
	switch {
	case m.Word != "":
		return plain(m.Word)
	case m.MM != 0:
		return c.mm(m.MM)
	}
	return plain(strconv.FormatFloat(math.Round(100*m.Number)/100, 'f', -1, 64)) // a part, such as 0.75
}
