package org.scrubline.progress.web;

import java.util.List;
import org.scrubline.platform.Wording;
import org.scrubline.progress.Gates;
import org.scrubline.progress.ProcedureProgress;
import org.scrubline.progress.Shortfall;
import org.scrubline.rubric.Step;
import org.springframework.stereotype.Component;

/** Names the gate that is not met, with its numbers. */
@Component
class EvidenceWords {

    private final Wording wording;

    EvidenceWords(Wording wording) {
        this.wording = wording;
    }

    ProgressPage.EvidenceNote note(ProcedureProgress progress) {
        Gates gates = progress.gates();
        int most = progress.settings().mostByOne();
        return new ProgressPage.EvidenceNote(
                gates.open(), sentences(gates.shown(), most), sentences(gates.supports(), most));
    }

    private List<String> sentences(List<Shortfall> shortfalls, int most) {
        return shortfalls.stream().map(shortfall -> sentence(shortfall, most)).toList();
    }

    private String sentence(Shortfall shortfall, int most) {
        Step step = shortfall.step();
        return wording.text(
                "progress.short." + shortfall.kind(),
                shortfall.has(),
                shortfall.needs(),
                step == null ? "" : step.name(),
                most);
    }
}
