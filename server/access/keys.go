package access

import (
	"context"
	"crypto/rand"
	"encoding/json"
	"fmt"
	"slices"
	"time"

	"rimside/store/sqlite"
)

// Secrets is where keys are kept.
type Secrets interface {
	Secret(ctx context.Context, name string, make func() ([]byte, error)) ([]byte, error)
	PutSecret(ctx context.Context, name string, value []byte) error
}

const (
	cookieSecret = "cookies"
	keptKeys     = 2
	keyBytes     = 32
)

// key signs and encrypts cookies.
type key struct {
	MadeAt int64  // ms since 1970
	Hash   []byte // 32 bytes for HMAC-SHA-256
	Block  []byte // 32 bytes for AES-256
}

// cookieKeys gives the keys, the newest first. They never change by themselves: siblings that share one name would no longer
// know each other's cookies.
func cookieKeys(ctx context.Context, secrets Secrets, now time.Time) ([]key, error) {
	stored, err := secrets.Secret(ctx, cookieSecret, func() ([]byte, error) { return json.Marshal([]key{newKey(now)}) })
	if err != nil {
		return nil, err
	}
	var keys []key
	err = json.Unmarshal(stored, &keys)
	if err != nil || len(keys) == 0 || slices.ContainsFunc(keys, key.isBroken) {
		return nil, fmt.Errorf("the keys of the sessions cannot be read (%v). %s", err, sqlite.HowToMend)
	}
	return keys, nil
}

// Rotate makes a new key for the cookies. Those of the key before stay good, and are written anew when their phones come;
// those of the key before that are worth nothing any more.
func Rotate(ctx context.Context, secrets Secrets, now time.Time) error {
	keys, err := cookieKeys(ctx, secrets, now)
	if err != nil {
		return err
	}
	keys = append([]key{newKey(now)}, keys...)
	value, err := json.Marshal(keys[:min(len(keys), keptKeys)])
	if err != nil {
		return err
	}
	return secrets.PutSecret(ctx, cookieSecret, value)
}

func (k key) isBroken() bool { return len(k.Hash) != keyBytes || len(k.Block) != keyBytes }

func newKey(now time.Time) key {
	k := key{MadeAt: now.UnixMilli(), Hash: make([]byte, keyBytes), Block: make([]byte, keyBytes)}
	_, _ = rand.Read(k.Hash) // never fails: it ends the program instead
	_, _ = rand.Read(k.Block)
	return k
}
