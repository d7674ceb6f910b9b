package store

import (
	"errors"
	"fmt"

	"toewright/internal/study"
)

// Keeper keeps the study that is open saved.
type Keeper struct {
	store *Store
	id    ID
	at    Version
	saved *study.Document // as it was last saved or opened
	spare *study.Document // that need not be kept until it is changed; nil for none
}

// NewKeeper returns a keeper of a study that is not kept yet.
func NewKeeper(s *Store) *Keeper { return &Keeper{store: s} }

// ID returns the study's name in the store, "" before the first save.
func (k *Keeper) ID() ID { return k.id }

// Version returns the version last saved or opened.
func (k *Keeper) Version() Version { return k.at }

// Open opens a study of the store and keeps it from now on.
func (k *Keeper) Open(id ID) (*Loaded, error) {
	l, err := k.store.Load(id)
	if err != nil {
		return nil, err
	}
	k.id, k.at, k.saved, k.spare = id, l.Version, l.Document, nil
	return l, k.store.SetCurrent(id)
}

// Start keeps another study from now on, one that the store does not have.
func (k *Keeper) Start() { *k = Keeper{store: k.store} }

// Spare starts with a study that anyone can have again, such as the demo: it is kept, as the
// first revision, once it is changed.
func (k *Keeper) Spare(d *study.Document) {
	k.Start()
	k.spare = d
}

// Unsaved reports whether d is another document than the one last saved.
func (k *Keeper) Unsaved(d *study.Document) bool { return d != k.saved && (d != k.spare || d == nil) }

// Save keeps d, if it is not kept already. It returns a notice for the user where
// another tab has saved the study meanwhile: both are kept then, this one as a study of
// its own.
func (k *Keeper) Save(d *study.Document, label string) (notice string, err error) {
	if !k.Unsaved(d) {
		return "", nil
	}
	if k.id == "" && k.spare != nil {
		if err := k.create(k.spare, ""); err != nil {
			return "", err
		}
	}
	if k.id == "" {
		return "", k.create(d, label)
	}
	v, err := k.store.Save(k.id, k.at, d, label)
	var conflict *ConflictError
	if errors.As(err, &conflict) {
		return fmt.Sprintf("%v; what you changed here is kept as a study of its own", conflict), k.create(d, label)
	}
	if err != nil {
		return "", err
	}
	k.at, k.saved = v, d
	return "", nil
}

func (k *Keeper) create(d *study.Document, label string) error {
	id, v, err := k.store.Create(d, label)
	if err != nil {
		return err
	}
	k.id, k.at, k.saved, k.spare = id, v, d, nil
	return k.store.SetCurrent(id)
}

// Apart keeps d as a study of its own from now on. The one that was kept stays as it is.
func (k *Keeper) Apart(d *study.Document, label string) error { return k.create(d, label) }

// Overtaken reports whether another tab has saved the study since it was saved or
// opened here.
func (k *Keeper) Overtaken() bool { return k.Theirs() != nil }

// Theirs returns the revision of another tab that has overtaken this one; nil where
// there is none.
func (k *Keeper) Theirs() *Revision {
	if k.id == "" {
		return nil
	}
	h, ok, err := k.store.head(k.id)
	if err != nil || !ok || h.Version == k.at {
		return nil
	}
	text, ok, err := k.store.storage.Get(revisionKey(k.id, h.Version))
	if err != nil || !ok {
		return nil
	}
	return parseRevision(h.Version, text)
}
