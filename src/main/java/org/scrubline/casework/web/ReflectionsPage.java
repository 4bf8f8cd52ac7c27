package org.scrubline.casework.web;

import java.util.List;
import org.scrubline.platform.FormView;

/**
 * A trainee's notes for themselves.
 *
 * @param about what a new note would be about, in words
 * @param procedure its code; empty for training as a whole
 * @param step its code; empty for none in particular
 * @param notes newest first; may be empty
 */
record ReflectionsPage(String about, String procedure, String step, FormView form, List<Note> notes) {

    /** A note with what it is about and when it was written, ready to print. */
    record Note(String id, String about, String when, String text) {}
}
