package report

import "unicode/utf8"

// head writes what and whose the sheet is, with its title block.
func (p *page) head() {
	p.open("header", "head")
	p.open("div", "")
	p.element("p", "kicker", "Bench sheet")
	p.open("h1", "")
	p.name(orWord(p.Study.Name, "Study without a name"))
	p.close("h1")
	p.open("p", "whose")
	p.name(p.carName(p.Candidate))
	p.close("p")
	p.close("div")
	p.titleBlock()
	p.close("header")
	p.notes()
}

func orWord(text, word string) string {
	if text == "" {
		return word
	}
	return text
}

// titleBlock writes the fields of a drawing's title block.
func (p *page) titleBlock() {
	w := p.Study.Window()
	p.block([][2]string{
		{"Revision", p.Study.Revision}, {"Date", p.Date},
		{"Lengths", p.n.LengthUnit()}, {"Toe", p.n.ToeUnit()},
		{"Travel", p.n.travel(w.Droop) + " droop to " + p.n.travel(w.Bump) + " bump"}, {"Program", "toewright " + p.Version},
		{"Made by", ""}, {"Checked by", ""},
	})
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
	b := p.Study.Borrowed()
	if warning := b.Warning(); warning != "" {
		p.element("p", "invented", warning)
	}
	if remark := b.Remark(); remark != "" {
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
