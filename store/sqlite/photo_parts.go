package sqlite

import (
	"context"
	"errors"
	"io"
)

// Held is how much of a photo is here.
type Held struct {
	Have  int64 // bytes
	Whole bool  // all of it, checked and kept
}

// PartOf tells how much of a photo is here.
func (b *Book) PartOf(hash string) (held Held, err error) {
	held.Have, held.Whole, err = b.blobs.Part(hash)
	return held, explain(err)
}

// AddPart adds bytes to a photo of a size from a place on, and keeps it once it is whole. What came before the link broke
// counts, so an error of the reader is none of ours. An erased photo is not taken: then the error is ErrErased.
func (b *Book) AddPart(ctx context.Context, hash string, from, size int64, content io.Reader) (held Held, err error) {
	if erased, err := b.BlobErased(ctx, hash); err != nil || erased {
		return held, errors.Join(explain(err), refuseErased(erased))
	}
	held.Have, held.Whole, err = b.blobs.AddPart(hash, from, size, content)
	if err != nil || !held.Whole {
		return held, explain(err)
	}
	// Its record may have been erased while the last part arrived.
	erased, err := b.BlobErased(ctx, hash)
	if err == nil && !erased {
		return held, nil
	}
	return Held{}, errors.Join(explain(err), refuseErased(erased), b.blobs.Delete(hash))
}
