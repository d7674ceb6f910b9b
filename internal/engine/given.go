package engine

// given returns the value of an option, or another where the option is not given: 0 is
// a value like any other.
func given[T any](option *T, otherwise T) T {
	if option != nil {
		return *option
	}
	return otherwise
}

// counted returns how many things an option asks for, or another number where it is not
// given. It returns an error that names the option where those are too few or too many.
func counted(key string, option *int, otherwise, least, most int) (int, error) {
	n := given(option, otherwise)
	if n < least || n > most {
		return 0, wrongf(key, "want %d to %d, got %d", least, most, n)
	}
	return n, nil
}
