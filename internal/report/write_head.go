package report

import (
	"cmp"
	"unicode/utf8"
)

// sheetHead writes what and whose the sheet is, with its title block.
func (p *page) sheetHead() {
	w := p.Study.Window()
	p.head("Bench sheet", [][2]string{
		{"Revision", p.Study.Revision}, {"Date", p.Date},
		{"Lengths", p.n.LengthUnit()}, {"Toe", p.n.ToeUnit()},
		{"Travel", p.n.travel(w.Droop) + " droop to " + p.n.travel(w.Bump) + " bump"}, {"Program", "toewright " + p.Version},
		{"Made by", ""}, {"Checked by", ""},
	})
	p.notes()
}

// head writes what a paper is and whose, with the fields of its title block, and whether it is
// invented.
func (p *page) head(kind string, fields [][2]string) {
	p.open("header", "head")
	p.open("div", "")
	p.element("p", "kicker", kind)
	p.open("h1", "")
	p.name(cmp.Or(p.Study.Name, "Study without a name"))
	p.close("h1")
	p.open("p", "whose")
	p.name(p.carName(p.Candidate))
	p.close("p")
	p.close("div")
	p.block(fields)
	p.close("header")
	if warning := p.Study.Borrowed().Warning(); warning != "" {
		p.element("p", "invented", warning)
	}
}

// block writes fields; empty ones are lines to write on.
func (p *page) block(fields [][2]string) {
	p.open("dl", "block")
	for _, f := range fields {
		p.open("div", "")
		p.element("dt", "", f[0])
		p.element("dd", "", f[1])
		p.close("div")
	}
	p.close("dl")
}

// longestNotes is the most of a study's notes, in characters, that has room.
const longestNotes = 320

// notes writes what is a template's rather than the car's, and the study's and the
// candidate's notes.
func (p *page) notes() {
	if remark := p.Study.Borrowed().Remark(); remark != "" {
		p.element("p", "notes", remark)
	}
	if p.Study.Notes != "" {
		p.open("p", "notes")
		p.name(shorten(p.Study.Notes, longestNotes))
		p.close("p")
	}
	if k := p.record(); k != nil && k.Note != "" {
		p.open("p", "notes")
		p.name(shorten(k.Note, longestNotes))
		p.close("p")
	}
}

// shorten cuts a text that has more than most characters.
func shorten(text string, most int) string {
	if utf8.RuneCountInString(text) <= most {
		return text
	}
	return string([]rune(text)[:most]) + " …"
}
