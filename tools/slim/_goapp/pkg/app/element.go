package app

// A text area shows its value, every other element with text has it for its content.

func (e *htmlShared) Text(v any) HTMLShared {
	if e.tag == "textarea" {
		e.setAttr("value", v)
		return e
	}
	return e.Body(Text(v))
}

func (e *htmlShared) Textf(format string, v ...any) HTMLShared {
	return e.Text(FormatString(format, v...))
}
