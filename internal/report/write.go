package report

import "io"

// Write writes a sheet as a page of its own. The same sheet gives the same bytes.
func Write(w io.Writer, s *Sheet) error {
	p := &page{Sheet: s, n: numbersOf(s.Study)}
	kind, dense := "Bench sheet", "dense"
	sections := []func(*page){
		(*page).sheetHead, (*page).changes, (*page).arms, (*page).verdicts, (*page).curves, (*page).tables, (*page).loads, (*page).terms,
	}
	switch {
	case s.Series != nil:
		kind, sections = "Series record", []func(*page){(*page).seriesHead, (*page).seriesCars, (*page).seriesCommon, (*page).cardTerms}
	case s.Card != nil:
		kind, sections = "Fitting card", []func(*page){(*page).cardHead, (*page).cardFits, (*page).curves, (*page).cardSets, (*page).cardReadings, (*page).cardTerms}
	case p.alike() && p.Loads == nil:
		dense = ""
	}
	p.start(kind, dense)
	for _, section := range sections {
		section(p)
	}
	p.end()
	_, err := w.Write(p.text)
	return err
}

// page is a sheet as it is written.
type page struct {
	markup
	*Sheet
	n numbers
}

// start begins a page of a kind, its class dense where much stands on it.
func (p *page) start(kind, class string) {
	p.text = append(p.text, "<!DOCTYPE html>\n"+`<html lang="en">`+"\n<head>\n"+`<meta charset="utf-8">`+"\n"...)
	p.text = append(p.text, `<meta http-equiv="Content-Security-Policy" content="`+Policy(p.Paper)+`">`+"\n"...)
	p.text = append(p.text, `<meta name="viewport" content="width=device-width, initial-scale=1">`+"\n"...)
	p.element("title", "", kind+": "+p.title())
	p.text = append(p.text, "<style>"+stylesheet(p.Paper)+"</style>\n</head>\n<body>\n"...)
	p.open("main", class)
}

func (p *page) end() { p.text = append(p.text, "</main>\n</body>\n</html>\n"...) }

// title names study and candidate.
func (p *page) title() string {
	if p.Study.Name == "" {
		return p.carName(p.Candidate)
	}
	return p.Study.Name + ", " + p.carName(p.Candidate)
}

// carName returns how a sheet calls a car.
func (p *page) carName(name string) string {
	if isBase(name) {
		return "base car"
	}
	return name
}
