package org.scrubline.signoff.web;

import java.util.UUID;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.scrubline.casework.OpenSheets;
import org.scrubline.casework.PieceCount;
import org.scrubline.casework.Sheet;
import org.scrubline.casework.StepState;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.SignedIn;
import org.scrubline.rubric.Rubric;
import org.scrubline.rubric.Rubrics;
import org.scrubline.signoff.SigningOutlook;
import org.scrubline.signoff.SigningStatements;
import org.springframework.stereotype.Component;
import org.springframework.web.servlet.ModelAndView;

/** What stands on the review page beside what is signed: how late it is, who else must sign, and the statement. */
@Component
class ReviewExtras {

    private final SigningOutlook outlook;
    private final OpenSheets open;
    private final ReviewNotices notices;
    private final SigningStatements statements;
    private final Rubrics rubrics;
    private final RecordWords words;

    ReviewExtras(
            SigningOutlook outlook,
            OpenSheets open,
            ReviewNotices notices,
            SigningStatements statements,
            Rubrics rubrics,
            RecordWords words) {
        this.outlook = outlook;
        this.open = open;
        this.notices = notices;
        this.statements = statements;
        this.rubrics = rubrics;
        this.words = words;
    }

    void add(ModelAndView page, SignedIn who, Sheet sheet) {
        UUID sheetId = sheet.id();
        page.addObject("pieces", pieces(sheet));
        page.addObject(
                "notices",
                Stream.concat(begun(sheetId), notices.of(outlook.of(who, sheetId)).stream())
                        .toList());
        page.addObject("accepted", statements.accepted(who.personId()));
    }

    /** Whoever signs answers of somebody else as their own should know whose they were. */
    private Stream<String> begun(UUID sheetId) {
        return open.begun(sheetId).stream()
                .map(begun -> words.say("signoff.outlook.begun", begun.name(), begun.answered()));
    }

    /** Asked about while a step that counts was observed, and the count is open. */
    private @Nullable PieceQuestion pieces(Sheet sheet) {
        Rubric rubric =
                rubrics.byId(sheet.rubricVersionId()).orElseThrow(NotFound::new).rubric();
        return PieceCount.of(rubric, sheet)
                .filter(count -> count.differs() || (count.unfilled() && observed(sheet, count)))
                .map(count -> PieceQuestion.of(sheet, count, words))
                .orElse(null);
    }

    private static boolean observed(Sheet sheet, PieceCount count) {
        return Stream.of(count.inStep(), count.outStep())
                .anyMatch(step -> sheet.step(step.code()) instanceof StepState.Scored);
    }
}
