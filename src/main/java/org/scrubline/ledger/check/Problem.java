package org.scrubline.ledger.check;

/** What can be wrong. {@code ledger.problem.NAME} says it in words; the arguments stand beside each. */
public enum Problem {
    /** 1 first number missing, 2 last. */
    LEAVES_MISSING,
    /** 1 the number that was found where a later one belongs. */
    LEAF_OUT_OF_ORDER,
    /** 1 number: the stored hash is not that of the entry. */
    LEAF_HASH,
    /** 1 number: the entry cannot be read. */
    ENTRY_UNREADABLE,
    /** 1 number: the entry is about something else than the leaf. */
    ENTRY_ELSEWHERE,
    /** 1 number, 2 kind: made by a later version of the program. */
    UNKNOWN_KIND,
    /** 1 record, 2 number: a second leaf of one record. */
    SECOND_LEAF,
    /** 1 record, 2 table. */
    ROWS_GONE,
    /** 1 record, 2 table. */
    ROWS_ADDED,
    /** 1 record, 2 table. */
    ROWS_CHANGED,
    /** 1 record, 2 table: rows no leaf fixes. */
    NO_LEAF,
    /** 1 record, 2 table, 3 column. */
    CONTRADICTION,
    /** 1 record: it names a passkey, and no signature of one is kept. */
    ASSERTION_MISSING,
    /** 1 record: a passkey's signature is kept under it, and it names none. */
    ASSERTION_UNNAMED,
    /** 1 record: the signature kept is another than the one it names. */
    ASSERTION_EXCHANGED,
    /** 1 record: the signature kept does not stand for what was signed. */
    ASSERTION_INVALID,
    /** 1 seal, 2 and 3 first and last number, 4 entries then, 5 entries now. */
    SEAL_BROKEN,
    /** 1 seal: it does not begin where the one before it ends. */
    SEAL_PLACE,
    /** 1 first leaf, 2 last leaf of the subtree. */
    SUBTREE_CHANGED,
    /** 1 first leaf, 2 last leaf of the subtree. */
    SUBTREE_MISSING,
    /** 1 first leaf, 2 last leaf: a subtree that is not there yet, or no subtree at all. */
    SUBTREE_ADDED,
    /** 1 size: the text is no checkpoint, or its columns or its place say something else. */
    CHECKPOINT_TEXT,
    /** 1 size, 2 and 3 the leaves among which one differs. */
    CHECKPOINT_ROOT,
    /** 1 size: the signature does not hold. */
    CHECKPOINT_SIGNATURE,
    /** 1 size: signed with a key nobody knows. */
    CHECKPOINT_KEY,
    /** 1 size of the newest, 2 its key: not the key that was given. */
    NEWEST_KEY,
    /** 1 the key: what stands as a key is none. */
    KEY_TEXT,
    /** 1 size of the checkpoint held, 2 leaves there are, 3 first missing. */
    HELD_LONGER,
    /** 1 size of the checkpoint held, 2 and 3 the leaves among which one differs. */
    HELD_ROOT,
    /** 1 size of the checkpoint held: its signature does not hold, or nobody knows its key. */
    HELD_SIGNATURE,
    /** 1 the origin: nothing of this ledger is here. */
    HELD_ORIGIN,
    /** 1 line of the file. */
    LINE_UNREADABLE,
    /** The file has no last line. */
    FILE_ENDS_EARLY,
    /** The receipt's path does not lead to the root of its checkpoint. */
    PATH
}
