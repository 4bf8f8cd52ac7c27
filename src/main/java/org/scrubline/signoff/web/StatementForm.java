package org.scrubline.signoff.web;

import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.scrubline.platform.FormView;
import org.scrubline.signoff.Statement;

/**
 * One form for everything that is said about a record.
 *
 * @param nav key of the entry it stands under
 * @param about the record in a line
 * @param lede what sending it does
 * @param quote what somebody else said that this answers; null when it answers nothing
 * @param action where it is sent
 * @param select a choice from a list, null when there is none
 * @param steps steps to name, null when none are asked for
 * @param signed what is signed about; null when it is not signed
 * @param acts what can be done, the main one first
 * @param form what was typed and what is wrong with it
 */
record StatementForm(
        String title,
        String nav,
        String about,
        String lede,
        @Nullable String quote,
        String action,
        Back back,
        @Nullable Select select,
        @Nullable Steps steps,
        Reason reason,
        @Nullable Signed signed,
        List<Act> acts,
        FormView form) {

    /** The same with what it answers. */
    StatementForm quoting(@Nullable String said) {
        return new StatementForm(
                title, nav, about, lede, said, action, back, select, steps, reason, signed, acts, form);
    }

    /** The same as an answer to somebody's statement. */
    StatementForm answering(@Nullable Statement said) {
        Signed answering =
                signed == null || said == null ? signed : new Signed(signed.record(), signed.hash(), said.hash());
        return new StatementForm(
                title, nav, about, lede, quote, action, back, select, steps, reason, answering, acts, form);
    }

    /** The version, the hash of its content, and that of the statement this answers; null when it answers none. */
    record Signed(UUID record, String hash, @Nullable String answers) {}

    /** Where to go without sending it. */
    record Back(String href, String label) {}

    /** One of a list. */
    record Select(String name, String label, List<Option> options) {}

    /** Any of the steps. */
    record Steps(List<Choice> options, List<String> chosen) {}

    record Option(String value, String label) {}

    /** A choice; {@code hint} may be null. */
    record Choice(String value, String label, @Nullable String hint) {}

    record Reason(String label, String hint, boolean required) {}

    /** A button, and what is signed by it; {@code meaning} is null when nothing is. */
    record Act(String value, String label, @Nullable String meaning) {}
}
