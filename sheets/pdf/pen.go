package pdf

import (
	"fmt"
	"io"
	"time"

	"bodkin/sheets/figure"
	"bodkin/sheets/pdf/typeface"

	"codeberg.org/go-pdf/fpdf"
)

// pen draws a drawing with fpdf, which keeps its first error and is asked for
// it once at the end.
type pen struct {
	pdf   *fpdf.Fpdf
	links map[string]int
	style typeface.Style
	size  float64
	set   bool
}

// writePDF draws the pages and writes the file. Two calls with the same
// drawing write the same bytes: catalogues are sorted, dates given, and there
// are no images.
func writePDF(w io.Writer, d *drawing, o Options) error {
	pdf := fpdf.NewCustom(&fpdf.InitType{UnitStr: "mm", Size: fpdf.SizeType{Wd: d.width, Ht: d.height}})
	pdf.SetCatalogSort(true)
	date := o.Date
	if date.IsZero() {
		date = time.Date(2000, 1, 1, 0, 0, 0, 0, time.UTC)
	}
	pdf.SetCreationDate(date.UTC())
	pdf.SetModificationDate(date.UTC())
	pdf.SetProducer("bodkin", true)
	pdf.SetCreator("bodkin", true)
	pdf.SetTitle(o.Title, true)
	if o.Author != "" {
		pdf.SetAuthor(o.Author, true)
	}
	if o.Notice != "" {
		pdf.SetSubject(o.Notice, true)
	}
	pdf.SetLang(o.Lang)
	pdf.SetAutoPageBreak(false, 0)
	pdf.SetMargins(0, 0, 0)
	p := &pen{pdf: pdf, links: map[string]int{}}
	p.fonts(d)
	p.targets(d)
	next := 0
	for n, pg := range d.pages {
		pdf.AddPage()
		p.set = false
		pdf.SetLineJoinStyle("round")
		for ; next < len(d.bookmarks) && d.bookmarks[next].page == n; next++ {
			if b := d.bookmarks[next]; p.font(0, 3) {
				pdf.Bookmark(b.title, b.level, b.y)
			}
		}
		for _, it := range pg.ink {
			switch it := it.(type) {
			case figure.Path:
				p.path(it)
			case figure.Circle:
				p.path(it.Outline())
			default:
				return fmt.Errorf("page %d: %T is not ink", n+1, it)
			}
		}
		for _, t := range pg.words {
			p.words(t)
		}
	}
	return pdf.Output(w)
}

// fonts adds the styles that the drawing uses; each costs some milliseconds.
func (p *pen) fonts(d *drawing) {
	var used [8]bool
	used[0] = len(d.bookmarks) > 0
	for _, pg := range d.pages {
		for _, t := range pg.words {
			used[t.Style] = true
		}
	}
	for s, ok := range used {
		if ok {
			family, style := fontName(typeface.Style(s))
			p.pdf.AddUTF8FontFromBytes(family, style, typeface.Style(s).TTF())
		}
	}
}

func fontName(s typeface.Style) (family, style string) {
	family = "dejavusans"
	if s&typeface.Condensed != 0 {
		family = "dejavusanscondensed"
	}
	if s&typeface.Bold != 0 {
		style += "B"
	}
	if s&typeface.Oblique != 0 {
		style += "I"
	}
	return family, style
}

// font chooses the font, if it is not the one in hand.
func (p *pen) font(s typeface.Style, size float64) bool {
	if !p.set || p.style != s || p.size != size {
		family, style := fontName(s)
		p.pdf.SetFont(family, style, size/mmPerPoint)
		p.style, p.size, p.set = s, size, true
	}
	return p.pdf.Ok()
}

// targets makes a link for each id that some words lead to, in their order.
func (p *pen) targets(d *drawing) {
	for _, pg := range d.pages {
		for _, t := range pg.words {
			at, ok := d.places[t.To.id]
			if _, made := p.links[t.To.id]; t.To.id == "" || !ok || made {
				continue
			}
			link := p.pdf.AddLink()
			p.pdf.SetLink(link, at.y, at.page+1)
			p.links[t.To.id] = link
		}
	}
}

func (p *pen) words(t words) {
	if t.Text == "" || !p.font(t.Style, t.Size) {
		return
	}
	level := int(max(0, min(1, t.Light))*255 + 0.5)
	p.pdf.SetTextColor(level, level, level)
	if t.Turn != 0 {
		p.pdf.TransformBegin()
		p.pdf.TransformRotate(t.Turn, t.X, t.Y)
		defer p.pdf.TransformEnd()
	}
	p.pdf.Text(t.X, t.Y, t.Text)
	b := t.box()
	switch {
	case t.To.uri != "":
		p.pdf.LinkString(b.Left, b.Top, b.Width(), b.Height(), t.To.uri)
	case t.To.id != "":
		p.pdf.Link(b.Left, b.Top, b.Width(), b.Height(), p.links[t.To.id])
	}
}

func (p *pen) path(path figure.Path) {
	how := ""
	if level, ok := path.Fill.Grey(); ok {
		c := colourOf(path.Fill.Thread, level)
		p.pdf.SetFillColor(int(c.R), int(c.G), int(c.B))
		how = "f*"
	}
	if path.Stroke.Width > 0 {
		c := colourOf(path.Stroke.Thread, path.Stroke.Grey())
		p.pdf.SetDrawColor(int(c.R), int(c.G), int(c.B))
		p.pdf.SetLineWidth(path.Stroke.Width)
		p.pdf.SetDashPattern(path.Stroke.Dash, 0)
		ends := "butt"
		if path.Stroke.Round {
			ends = "round"
		}
		p.pdf.SetLineCapStyle(ends)
		how = map[string]string{"": "S", "f*": "B*"}[how]
	}
	if how == "" || len(path.Segments) == 0 {
		return
	}
	p.pdf.MoveTo(path.Start.X, path.Start.Y)
	for _, s := range path.Segments {
		switch s.Step {
		case figure.LineTo:
			p.pdf.LineTo(s.To.X, s.To.Y)
		case figure.CubicTo:
			p.pdf.CurveBezierCubicTo(s.C1.X, s.C1.Y, s.C2.X, s.C2.Y, s.To.X, s.To.Y)
		case figure.MoveTo:
			if path.Closed {
				p.pdf.ClosePath()
			}
			p.pdf.MoveTo(s.To.X, s.To.Y)
		}
	}
	if path.Closed {
		p.pdf.ClosePath()
	}
	p.pdf.DrawPath(how)
}

func colourOf(thread *figure.RGB, level uint8) figure.RGB {
	if thread != nil {
		return *thread
	}
	return figure.RGB{R: level, G: level, B: level}
}
