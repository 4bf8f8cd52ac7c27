package org.scrubline.people;

import com.ibm.icu.lang.UCharacter;
import com.ibm.icu.lang.UProperty;
import com.ibm.icu.text.SpoofChecker;
import com.ibm.icu.text.SpoofChecker.RestrictionLevel;
import java.util.Collection;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;
import org.scrubline.platform.Refusal;

/**
 * Names that are not what they look like: with signs nobody sees, in mixed scripts, or written with other signs than a name
 * there is (Unicode Technical Standard 39, skeletons and restriction levels, by the library of the Unicode project). Names of
 * one script that look alike, such as Corner and Comer, are two people.
 */
final class LookAlikes {

    /** The most marks on one letter; Hebrew and Vietnamese need up to three, from memory. */
    private static final int MARKS = 4;

    private static final Pattern PILED = Pattern.compile("\\p{M}{" + (MARKS + 1) + "}");
    private static final Pattern WORDS = Pattern.compile("[\\s.,'’-]+");
    private static final int OTHER_SCRIPTS =
            SpoofChecker.MIXED_SCRIPT_CONFUSABLE | SpoofChecker.WHOLE_SCRIPT_CONFUSABLE;

    private static final SpoofChecker SCRIPTS = new SpoofChecker.Builder()
            .setChecks(SpoofChecker.RESTRICTION_LEVEL)
            .setRestrictionLevel(RestrictionLevel.MODERATELY_RESTRICTIVE)
            .build();
    private static final SpoofChecker SKELETONS =
            new SpoofChecker.Builder().setChecks(SpoofChecker.CONFUSABLE).build();

    private LookAlikes() {}

    /**
     * Why a name cannot be taken, if so.
     *
     * @param name tidied, not empty
     * @param others names there are
     */
    static Optional<Refusal> check(String field, String name, Collection<String> others) {
        if (name.codePoints().anyMatch(LookAlikes::unseen)) {
            return Optional.of(Refusal.at(field, "refusal.name.unseen"));
        }
        if (PILED.matcher(name).find()) {
            return Optional.of(Refusal.at(field, "refusal.name.piled", MARKS));
        }
        if (WORDS.splitAsStream(name).anyMatch(SCRIPTS::failsChecks)) {
            return Optional.of(Refusal.at(field, "refusal.name.scripts"));
        }
        return others.stream()
                .filter(other -> alike(name, other))
                .findFirst()
                .map(other -> Refusal.at(field, "refusal.name.alike", other));
    }

    /** Signs that turn the direction of what follows, have no width, or are made to be ignored. */
    private static boolean unseen(int point) {
        return Character.getType(point) == Character.FORMAT
                || UCharacter.hasBinaryProperty(point, UProperty.DEFAULT_IGNORABLE_CODE_POINT);
    }

    private static boolean alike(String name, String other) {
        String one = name.toLowerCase(Locale.ROOT);
        String two = other.toLowerCase(Locale.ROOT);
        return !one.equals(two)
                && ((SKELETONS.areConfusable(name, other) | SKELETONS.areConfusable(one, two)) & OTHER_SCRIPTS) != 0;
    }
}
