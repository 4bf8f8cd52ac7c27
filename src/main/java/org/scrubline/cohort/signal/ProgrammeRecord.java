package org.scrubline.cohort.signal;

import java.time.Duration;
import java.time.Instant;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.scrubline.scoring.curve.ProcedureStandard;

/**
 * All that the rules read of one programme.
 *
 * @param forms the signed sheets that count, of every procedure
 * @param unsigned sheets asked for about ended cases that nobody signed
 * @param earlier cases each trainee declared from before the programme, all procedures together
 * @param critical steps that decide a whole case, by procedure
 * @param at the instant the record is read for
 */
public record ProgrammeRecord(
        List<SignedForm> forms,
        List<Unsigned> unsigned,
        Map<String, Integer> earlier,
        Map<String, List<String>> critical,
        Limits limits,
        Instant at) {

    /** A sheet nobody signed. */
    public record Unsigned(String trainee, String caseId, Instant endedAt) {}

    /**
     * The programme's own numbers.
     *
     * @param gap a longer time without a case is a break
     * @param late a later signature is late
     * @param closed an older unsigned sheet counts as never scored
     */
    public record Limits(Duration gap, Duration late, Duration closed, ProcedureStandard.Minimums minimums) {}

    public ProgrammeRecord {
        forms = List.copyOf(forms);
        unsigned = List.copyOf(unsigned);
        earlier = Map.copyOf(earlier);
        critical = Map.copyOf(critical);
    }

    /** Everyone with a case, sorted. */
    public List<String> trainees() {
        return Stream.concat(
                        forms.stream().map(SignedForm::trainee),
                        unsigned.stream().map(Unsigned::trainee))
                .distinct()
                .sorted()
                .toList();
    }

    /** Everyone who signed, sorted. */
    public List<String> scorers() {
        return forms.stream().map(SignedForm::scorer).distinct().sorted().toList();
    }

    List<SignedForm> about(String trainee) {
        return forms.stream().filter(form -> form.trainee().equals(trainee)).toList();
    }

    List<SignedForm> by(String scorer) {
        return forms.stream().filter(form -> form.scorer().equals(scorer)).toList();
    }

    /** Ends of all cases of a trainee, signed or not, oldest first, each case once. */
    public List<Instant> ended(String trainee) {
        Map<String, Instant> byCase = new HashMap<>();
        about(trainee).forEach(form -> byCase.put(form.caseId(), form.endedAt()));
        unsigned.stream()
                .filter(one -> one.trainee().equals(trainee))
                .forEach(one -> byCase.put(one.caseId(), one.endedAt()));
        return byCase.values().stream().sorted().toList();
    }

    /** Sheets about a trainee that were not signed before they closed. */
    int never(String trainee) {
        return (int) unsigned.stream()
                .filter(one -> one.trainee().equals(trainee))
                .filter(one -> Duration.between(one.endedAt(), at).compareTo(limits.closed()) > 0)
                .count();
    }
}
