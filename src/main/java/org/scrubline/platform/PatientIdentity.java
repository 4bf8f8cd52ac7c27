package org.scrubline.platform;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.json.JsonMapper;

/**
 * Looks in typed text for what may identify a patient. What certainly does is refused; for the rest the writer is asked
 * once and decides. The patterns are common practice, no source; a browser that works without the server reads the same
 * file, {@code /js/patient-identity.json}, and its patterns keep to what Java and JavaScript read alike.
 */
public final class PatientIdentity {

    private static final String FILE = "/static/js/patient-identity.json";
    private static final List<Screen> SCREENS = read();

    private PatientIdentity() {}

    /**
     * What was found.
     *
     * @param kind end of the message keys
     * @param certain whether it can hardly be anything else
     */
    public record Hint(String kind, boolean certain) {}

    /** One pattern of the file; {@code check} names the arithmetic a match must also pass. */
    private record Rule(
            String kind,
            boolean certain,
            String flags,
            String pattern,
            @Nullable String check) {}

    private record Screen(Hint hint, Pattern pattern, boolean checked) {}

    /** Everything found in the text, each kind once; empty when it looks harmless. */
    public static List<Hint> hints(String text) {
        List<Hint> hints = new ArrayList<>();
        String rest = text;
        for (Screen screen : SCREENS) {
            Matcher matcher = screen.pattern().matcher(rest);
            if (matcher.results().anyMatch(match -> !screen.checked() || checksOut(match))) {
                hints.add(screen.hint());
                rest = matcher.replaceAll(" ");
            }
        }
        return hints.stream().distinct().toList();
    }

    /**
     * Whether the last of ten digits checks the nine before it: weights 10 to 2, modulus 11, as health numbers in Britain
     * are made (published rule, from memory).
     */
    private static boolean checksOut(MatchResult match) {
        String digits = match.group().replaceAll("\\D", "");
        int sum = 0;
        for (int i = 0; i < digits.length() - 1; i++) {
            sum += (digits.length() - i) * Character.digit(digits.charAt(i), 10);
        }
        int check = (11 - sum % 11) % 11;
        return check == Character.digit(digits.charAt(digits.length() - 1), 10);
    }

    private static List<Screen> read() {
        try (InputStream file = Objects.requireNonNull(PatientIdentity.class.getResourceAsStream(FILE))) {
            Rule[] rules = JsonMapper.builder().build().readValue(file, Rule[].class);
            return List.of(rules).stream().map(PatientIdentity::screen).toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static Screen screen(Rule rule) {
        int flags = rule.flags().contains("i") ? Pattern.CASE_INSENSITIVE | Pattern.UNICODE_CASE : 0;
        Pattern pattern = Pattern.compile(rule.pattern(), flags);
        return new Screen(new Hint(rule.kind(), rule.certain()), pattern, rule.check() != null);
    }
}
