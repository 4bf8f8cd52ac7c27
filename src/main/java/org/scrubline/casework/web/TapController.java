package org.scrubline.casework.web;

import jakarta.servlet.http.HttpServletRequest;
import java.io.IOException;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.scrubline.casework.Sheets;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.StaleData;
import org.scrubline.rubric.Step;
import org.springframework.http.HttpStatus;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.web.bind.annotation.ExceptionHandler;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RestController;
import org.springframework.web.method.annotation.MethodArgumentTypeMismatchException;

/** One tap on the sheet at a time. An answer of 200 means the change is committed. */
@RestController
class TapController {

    private final Drafts drafts;
    private final Sheets sheets;
    private final SheetPages pages;
    private final StepViews steps;
    private final Foot foot;
    private final SheetWords words;

    TapController(Drafts drafts, Sheets sheets, SheetPages pages, StepViews steps, Foot foot, SheetWords words) {
        this.drafts = drafts;
        this.sheets = sheets;
        this.pages = pages;
        this.steps = steps;
        this.foot = foot;
        this.words = words;
    }

    /** Why a tap was not applied, in sentences. */
    record Problem(List<String> reasons, String back) {}

    @PostMapping(path = "/sheets/{id}/taps")
    ResponseEntity<Object> tap(@AuthenticationPrincipal SignedIn who, @PathVariable UUID id, HttpServletRequest request)
            throws IOException {
        Draft draft = drafts.open(who, id);
        Optional<TapBody> body = TapBody.read(request.getInputStream());
        return body.isEmpty()
                ? problem(HttpStatus.BAD_REQUEST, List.of(words.say("sheet.tap.unreadable")), "")
                : apply(who, draft, body.get());
    }

    private ResponseEntity<Object> apply(SignedIn who, Draft draft, TapBody tap) {
        SheetReading reading = draft.read(tap.sent());
        if (!reading.refusals().isEmpty()) {
            return refused(reading.refusals());
        }
        return sheets.tap(who, draft.sheet().id(), tap.tap(), tap.version(), reading.change())
                .fold(sheet -> json(HttpStatus.OK, answer(draft.with(sheet), reading)), this::refused);
    }

    private TapAnswer answer(Draft draft, SheetReading reading) {
        SheetPage.Foot bar = foot.of(draft);
        Map<String, String> answers = new LinkedHashMap<>();
        Map<String, String> causes = new LinkedHashMap<>();
        for (Step step : draft.rubric().steps()) {
            answers.put(step.code(), SheetInput.answer(draft.sheet().step(step.code())));
            String cause = steps.cause(draft.sheet().step(step.code()));
            if (cause != null) {
                causes.put(step.code(), cause);
            }
        }
        SheetInput stored = draft.stored();
        Suggestions suggestions = new Suggestions(draft.rubric(), draft.sheet());
        return new TapAnswer(
                draft.sheet().lockVersion(),
                bar.done(),
                bar.total(),
                words.say("components.verdict.progress", bar.done(), bar.total()),
                bar.verdict(),
                bar.reasons(),
                answers,
                causes,
                stored.text("part"),
                stored.text("supervision"),
                pages.roleSaid(draft),
                steps.pieces(draft),
                pages.recorded(draft),
                suggestions.strengths(),
                suggestions.nextSteps(),
                words.identityWarnings(reading.texts()));
    }

    private ResponseEntity<Object> refused(List<Refusal> reasons) {
        return problem(
                HttpStatus.UNPROCESSABLE_CONTENT,
                reasons.stream().map(words::say).distinct().toList(),
                "");
    }

    @ExceptionHandler
    ResponseEntity<Object> stale(StaleData stale) {
        List<String> lines = stale.lines().stream()
                .map(line -> words.say("sheet.tap.stale-line", line.label(), line.yours(), line.stored()))
                .toList();
        return problem(HttpStatus.CONFLICT, lines, stale.back());
    }

    @ExceptionHandler({NotFound.class, MethodArgumentTypeMismatchException.class})
    ResponseEntity<Object> notFound() {
        return problem(HttpStatus.NOT_FOUND, List.of(words.say("sheet.tap.gone")), "");
    }

    private static ResponseEntity<Object> problem(HttpStatus status, List<String> reasons, String back) {
        return json(status, new Problem(reasons, back));
    }

    private static ResponseEntity<Object> json(HttpStatus status, Object body) {
        return ResponseEntity.status(status)
                .contentType(MediaType.APPLICATION_JSON)
                .body(body);
    }
}
