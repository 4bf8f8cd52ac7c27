package org.scrubline.platform;

import java.text.Normalizer;
import java.util.List;
import java.util.Optional;

/** Text typed by people: one normal form, no characters that are not text, a stated length. */
public final class FreeText {

    private FreeText() {}

    /**
     * Unicode normal form C with outer white space removed and line ends as {@code \n}.
     *
     * @param raw as received; null counts as empty
     */
    public static String tidy(@org.jspecify.annotations.Nullable String raw) {
        if (raw == null) {
            return "";
        }
        return Normalizer.normalize(raw, Normalizer.Form.NFC)
                .replace("\r\n", "\n")
                .strip();
    }

    /**
     * Why a tidied text cannot be kept, if so.
     *
     * @param field form field for the error summary
     * @param text tidied text
     * @param maximum longest length in characters (code points)
     */
    public static Optional<Refusal> check(String field, String text, int maximum) {
        if (hasForbiddenCharacter(text)) {
            return Optional.of(Refusal.at(field, "refusal.text.characters"));
        }
        int length = text.codePointCount(0, text.length());
        if (length > maximum) {
            return Optional.of(Refusal.at(field, "refusal.text.length", length, maximum));
        }
        return Optional.empty();
    }

    /**
     * The same for sentences about a case or a person, which must not point to a patient: what certainly does is refused,
     * and about the rest the writer is asked once, see {@link ReadAgain}.
     */
    public static Optional<Refusal> narrative(String field, String text, int maximum) {
        return check(field, text, maximum)
                .or(() -> identity(text).map(kind -> Refusal.at(field, "refusal.identity." + kind)));
    }

    private static Optional<String> identity(String text) {
        List<PatientIdentity.Hint> hints = PatientIdentity.hints(text);
        Optional<String> certain = hints.stream()
                .filter(PatientIdentity.Hint::certain)
                .map(PatientIdentity.Hint::kind)
                .findFirst();
        if (certain.isPresent() || hints.isEmpty() || !ReadAgain.needed(text)) {
            return certain;
        }
        return Optional.of(hints.size() > 1 ? "several" : hints.get(0).kind());
    }

    /** NUL, other control characters except tab and line feed, and halves of surrogate pairs. */
    public static boolean hasForbiddenCharacter(String text) {
        return text.codePoints().anyMatch(FreeText::forbidden);
    }

    private static boolean forbidden(int point) {
        boolean control =
                Character.getType(point) == Character.CONTROL && point != '\n' && point != '\t' && point != '\r';
        return control || (point >= Character.MIN_SURROGATE && point <= Character.MAX_SURROGATE);
    }
}
