package org.scrubline.committee.pack;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.scrubline.committee.pack.PackContent.Answer;
import org.scrubline.committee.pack.PackContent.AskLine;
import org.scrubline.committee.pack.PackContent.FamilyLine;
import org.scrubline.committee.pack.PackContent.Gate;
import org.scrubline.committee.pack.PackContent.LevelLine;
import org.scrubline.progress.ProgressAsOf.Known;
import org.scrubline.rubric.Family;
import org.scrubline.scoring.curve.Readiness;
import org.scrubline.scoring.curve.Support;
import org.scrubline.signoff.SignedSheet;

/**
 * What the evidence says on each level of each family, gate by gate: enough to show, enough to support, the checklist and
 * the model's standard. It proposes in three phrases; a person decides.
 */
final class Proposals {

    private static final double PERCENT = 100;
    private static final int ASSURANCE = 80;
    private static final Comparator<Known> BY_CASES =
            Comparator.comparingInt(one -> one.progress().evidence().cases().size());

    private Proposals() {}

    /**
     * One line a family.
     *
     * @param followed cases with a visit at three months
     */
    static List<FamilyLine> of(List<Known> known, Set<UUID> followed) {
        List<FamilyLine> lines = new ArrayList<>();
        for (Family family : Family.values()) {
            List<Known> members = known.stream()
                    .filter(one -> one.progress().rubric().family() == family)
                    .toList();
            if (!members.isEmpty()) {
                lines.add(line(family, members, FamilyCases.of(sheets(known, Family.POST_OPERATIVE_CARE)), followed));
            }
        }
        return lines;
    }

    private static FamilyLine line(Family family, List<Known> members, FamilyCases care, Set<UUID> followed) {
        Known main = members.stream()
                .reduce((a, b) -> BY_CASES.compare(b, a) > 0 ? b : a)
                .orElseThrow();
        boolean signalled = main.progress().chart().signal().isPresent();
        FamilyCases cases = FamilyCases.of(sheets(members, family));
        Checklist checklist = new Checklist(cases, care, cases.among(followed), signalled);
        return new FamilyLine(
                family,
                main.progress().rubric().procedure(),
                main.curve().model().readiness().stream()
                        .map(readiness -> level(readiness, main, checklist))
                        .toList());
    }

    private static List<SignedSheet> sheets(List<Known> known, Family family) {
        return known.stream()
                .filter(one -> one.progress().rubric().family() == family)
                .flatMap(one -> one.progress().evidence().sheets().stream())
                .toList();
    }

    private static LevelLine level(Readiness readiness, Known main, Checklist checklist) {
        String level = readiness.standard().code();
        List<AskLine> asks = Stream.concat(checklist.rows(level).stream(), model(readiness, main).stream())
                .toList();
        Gate gate = gate(readiness, main, asks);
        return new LevelLine(level, answer(gate), gate, asks);
    }

    /** The first gate that is not met; null when all are. */
    private static @Nullable Gate gate(Readiness readiness, Known main, List<AskLine> asks) {
        if (!main.progress().gates().open() || !main.curve().shown()) {
            return Gate.SHOWN;
        }
        boolean enough = main.progress().gates().supports().isEmpty() && readiness.support() != Support.INSUFFICIENT;
        if (!enough) {
            return Gate.SUPPORTS;
        }
        return asks.stream().allMatch(AskLine::met) ? null : Gate.ENTITLEMENT;
    }

    private static Answer answer(@Nullable Gate gate) {
        if (gate == null) {
            return Answer.SUPPORTS;
        }
        return gate == Gate.ENTITLEMENT ? Answer.NOT_YET : Answer.INSUFFICIENT;
    }

    /** A modelled number is not printed before the first gate. */
    private static Optional<AskLine> model(Readiness readiness, Known main) {
        if (!main.progress().gates().open() || !main.curve().shown()) {
            return Optional.empty();
        }
        boolean met = readiness.support() == Support.SUPPORTS;
        int assurance = (int) Math.floor(readiness.assurance() * PERCENT);
        return Optional.of(new AskLine(Ask.MODEL, assurance, ASSURANCE, met, List.of()));
    }
}
