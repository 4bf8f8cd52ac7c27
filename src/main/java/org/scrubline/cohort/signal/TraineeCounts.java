package org.scrubline.cohort.signal;

import java.util.List;
import java.util.Set;
import org.scrubline.scoring.curve.CaseBand;

/**
 * What training gave one trainee, for comparing groups: no level of any step.
 *
 * @param monthly cases a month while present
 * @param harder share of the signed sheets about cases of band C or D, 0 to 1
 * @param late share of the signed sheets that came late, 0 to 1
 */
public record TraineeCounts(String trainee, double monthly, double harder, double late) {

    /** With fewer signed sheets a share says little. */
    private static final int SHEETS = 10;

    private static final Set<CaseBand> HARDER = Set.of(CaseBand.C, CaseBand.D);

    /** Of every trainee who can be compared: ten signed sheets and a quarter of a year or more. */
    public static List<TraineeCounts> of(ProgrammeRecord programme) {
        return programme.trainees().stream()
                .filter(trainee -> programme.about(trainee).size() >= SHEETS)
                .map(trainee -> of(programme, trainee))
                .filter(counts -> counts.monthly > 0)
                .toList();
    }

    private static TraineeCounts of(ProgrammeRecord programme, String trainee) {
        List<SignedForm> forms = programme.about(trainee);
        long harder =
                forms.stream().filter(form -> HARDER.contains(form.band())).count();
        long late = forms.stream()
                .filter(form -> form.delay().compareTo(programme.limits().late()) > 0)
                .count();
        return new TraineeCounts(
                trainee,
                EvidenceRules.monthly(
                        programme.ended(trainee), programme.limits().gap()),
                (double) harder / forms.size(),
                (double) late / forms.size());
    }
}
