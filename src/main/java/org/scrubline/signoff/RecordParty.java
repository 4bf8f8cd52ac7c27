package org.scrubline.signoff;

/** How a person stands to one sheet. What else must hold of them (no conflict, not twice the same) the services check. */
public enum RecordParty {
    /** The supervisor the sheet belongs to, who signs it. */
    SCORER,
    /** Who may sign a new version in the scorer's place: the reviewer of an upheld contest, or somebody named. */
    DELEGATE,
    TRAINEE,
    DIRECTOR,
    /** A supervisor of the programme who is neither scorer nor trainee. */
    SECOND_SUPERVISOR,
    /** Who was named to decide a contest. */
    REVIEWER
}
