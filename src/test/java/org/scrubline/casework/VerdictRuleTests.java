package org.scrubline.casework;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.scrubline.casework.StepState.BySupervisor;
import org.scrubline.casework.StepState.BySupervisor.Cause;
import org.scrubline.platform.Refusal;
import org.scrubline.rubric.EventCatalogue;
import org.scrubline.rubric.EventKind;
import org.scrubline.rubric.Family;
import org.scrubline.rubric.Phase;
import org.scrubline.rubric.Rubric;
import org.scrubline.rubric.Step;
import org.scrubline.rubric.TakeoverReason;

/**
 * The truth table of the verdict: the programme's own rule, no outside source. Steps A, B and C are critical, the small
 * letters are not. States: 1 to 5, S by supervisor, T after a takeover, X not part, U not seen, - blank.
 */
class VerdictRuleTests {

    private static final List<String> CODES = List.of("A", "B", "C", "d", "e", "f", "g");
    private static final EventCatalogue CATALOGUE = new EventCatalogue(List.of(
            new EventKind("LEAK", "Leak left at the end", true, false),
            new EventKind("BLEEDING", "Bleeding beyond usual", false, false),
            new EventKind(EventCatalogue.TAKEOVER, "Takeover", false, true)));

    @ParameterizedTest(name = "{0} {1} is {2}")
    @CsvSource({
        // independent: critical steps at 4 or 5 or not part, no step at 1, at most two others at 3
        "4445555, '', INDEPENDENT",
        "5555555, '', INDEPENDENT",
        "4X45555, '', INDEPENDENT",
        "XXX5555, '', INDEPENDENT",
        "4443355, '', INDEPENDENT",
        "4442255, '', INDEPENDENT",
        "4442222, '', INDEPENDENT",
        "4442233, '', INDEPENDENT",
        "444----, '', INDEPENDENT",
        "444SUXT, '', INDEPENDENT",
        "4445555, BLEEDING, INDEPENDENT",
        "4445555, TAKEOVER-TIME, INDEPENDENT",
        "4445555, TAKEOVER-TEACHING, INDEPENDENT",
        // safe with supervisor scrubbed: one clause of independence broken at a time
        "3445555, '', SAFE_WITH_SUPERVISOR_SCRUBBED",
        "3335555, '', SAFE_WITH_SUPERVISOR_SCRUBBED",
        "3XX5555, '', SAFE_WITH_SUPERVISOR_SCRUBBED",
        "4441555, '', SAFE_WITH_SUPERVISOR_SCRUBBED",
        "4443335, '', SAFE_WITH_SUPERVISOR_SCRUBBED",
        "4443333, '', SAFE_WITH_SUPERVISOR_SCRUBBED",
        "3341333, '', SAFE_WITH_SUPERVISOR_SCRUBBED",
        // no verdict: by supervisor, not seen and blank do not satisfy a critical step
        "44S5555, '', NO_VERDICT",
        "44T5555, '', NO_VERDICT",
        "44U5555, '', NO_VERDICT",
        "44-5555, '', NO_VERDICT",
        "3-S5555, '', NO_VERDICT",
        "---5555, '', NO_VERDICT",
        "-------, '', NO_VERDICT",
        "44-1555, '', NO_VERDICT",
        // not yet safe comes first, whatever else is open or good
        "1445555, '', NOT_YET_SAFE",
        "2445555, '', NOT_YET_SAFE",
        "2US5555, '', NOT_YET_SAFE",
        "1------, '', NOT_YET_SAFE",
        "5555555, LEAK, NOT_YET_SAFE",
        "5555555, TAKEOVER-SAFETY, NOT_YET_SAFE",
        "3335555, LEAK, NOT_YET_SAFE",
        "-------, LEAK, NOT_YET_SAFE",
        "UUU5555, TAKEOVER-SAFETY, NOT_YET_SAFE",
        "1445555, LEAK, NOT_YET_SAFE"
    })
    void theTableHolds(String states, String event, Verdict expected) {
        assertThat(evaluate(states, event).verdict()).isEqualTo(expected);
    }

    @Test
    void theReasonsNameWhatDecides() {
        assertThat(evaluate("1425555", "LEAK").reasons())
                .containsExactly(
                        Refusal.at("step.A", "verdict.reason.low", "Step A", 1),
                        Refusal.at("step.C", "verdict.reason.low", "Step C", 2),
                        Refusal.of("verdict.reason.event", "Leak left at the end"));
        assertThat(evaluate("4SU5555", "").reasons())
                .containsExactly(Refusal.at("step.B", "verdict.reason.open", 2, "Step B, Step C"));
        assertThat(evaluate("3441333", "").reasons())
                .containsExactly(
                        Refusal.at("step.A", "verdict.reason.three", "Step A"),
                        Refusal.at("step.d", "verdict.reason.one", "Step d"),
                        Refusal.at("step.e", "verdict.reason.threes", 3, "Step e, Step f, Step g"));
        assertThat(evaluate("4445555", "").reasons()).containsExactly(Refusal.of("verdict.reason.independent"));
    }

    @Test
    void randomSheetsAgreeWithTheSentenceWrittenAgain() {
        Random random = new Random(20260312);
        Map<Verdict, Integer> met = new LinkedHashMap<>();
        for (int i = 0; i < 20_000; i++) {
            String pool = i % 2 == 0 ? "3444555X" : "12345STUX-4545";
            StringBuilder states = new StringBuilder();
            CODES.forEach(code -> states.append(pool.charAt(random.nextInt(pool.length()))));
            String event = List.of("", "", "BLEEDING", "TAKEOVER-TIME", "TAKEOVER-SAFETY", "LEAK")
                    .get(random.nextInt(6));
            Verdict verdict = evaluate(states.toString(), event).verdict();
            assertThat(verdict).as("%s %s", states, event).isEqualTo(oracle(states.toString(), event));
            met.merge(verdict, 1, Integer::sum);
        }
        assertThat(met).containsOnlyKeys(Verdict.values());
        assertThat(met.values()).allMatch(count -> count > 500);
    }

    /** The rule once more on the bare letters, written without the code under test. */
    private static Verdict oracle(String states, String event) {
        String critical = states.substring(0, 3);
        String others = states.substring(3);
        if (critical.matches(".*[12].*") || event.equals("LEAK") || event.endsWith("SAFETY")) {
            return Verdict.NOT_YET_SAFE;
        }
        boolean threes = others.replaceAll("[^3]", "").length() <= 2;
        if (critical.matches("[45X]+") && others.indexOf('1') < 0 && threes) {
            return Verdict.INDEPENDENT;
        }
        return critical.matches("[345X]+") ? Verdict.SAFE_WITH_SUPERVISOR_SCRUBBED : Verdict.NO_VERDICT;
    }

    private static CaseVerdict evaluate(String states, String event) {
        Map<String, StepState> steps = new LinkedHashMap<>();
        for (int i = 0; i < CODES.size(); i++) {
            StepState state = state(states.charAt(i));
            if (state != null) {
                steps.put(CODES.get(i), state);
            }
        }
        return CaseVerdict.of(rubric(), CATALOGUE, sheet(steps, event));
    }

    private static @Nullable StepState state(char letter) {
        return switch (letter) {
            case 'S' -> new BySupervisor(Cause.PLAN);
            case 'T' -> new BySupervisor(Cause.AFTER_TAKEOVER);
            case 'X' -> new StepState.NotPart();
            case 'U' -> new StepState.NotSeen();
            case '-' -> null;
            default -> new StepState.Scored(letter - '0');
        };
    }

    private static Sheet sheet(Map<String, StepState> steps, String event) {
        List<RecordedEvent> events = new ArrayList<>();
        if (!event.isEmpty()) {
            int dash = event.indexOf('-');
            String code = dash < 0 ? event : event.substring(0, dash);
            TakeoverReason reason = dash < 0 ? null : TakeoverReason.valueOf(event.substring(dash + 1));
            events.add(new RecordedEvent(UUID.randomUUID(), code, "d", reason, "", Instant.EPOCH));
        }
        UUID any = UUID.randomUUID();
        return new Sheet(
                any,
                any,
                any,
                any,
                any,
                SheetState.OPEN,
                null,
                null,
                steps,
                Set.of(),
                Map.of(),
                events,
                "",
                "",
                Instant.EPOCH,
                null,
                0,
                null);
    }

    private static Rubric rubric() {
        List<String> sentences = List.of("one", "two", "three", "four", "five");
        List<Step> steps = CODES.stream()
                .map(code -> new Step(
                        code,
                        "Step " + code,
                        Phase.FLAP,
                        Character.isUpperCase(code.charAt(0)),
                        "",
                        List.of(),
                        sentences,
                        List.of(),
                        List.of(),
                        List.of(),
                        false))
                .toList();
        return new Rubric("TEST", "1.0", "Test", Family.TRABECULECTOMY, steps);
    }
}
