package org.scrubline.training.web;

import jakarta.servlet.http.HttpServletResponse;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Stream;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.Audited;
import org.scrubline.platform.FormView;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.RecordSeen;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.Wording;
import org.scrubline.training.TrainingDraft;
import org.scrubline.training.TrainingEntry;
import org.scrubline.training.TrainingFile;
import org.scrubline.training.TrainingRecords;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/** A trainee's record: read, added to, practice confirmed. */
@Controller
@RequestMapping("/training/{trainee}")
class TrainingController {

    private static final int UNPROCESSABLE = 422;

    private final TrainingRecords records;
    private final TrainingPages pages;
    private final EarlierCases earlier;
    private final Wording wording;
    private final ApplicationEventPublisher events;

    TrainingController(
            TrainingRecords records,
            TrainingPages pages,
            EarlierCases earlier,
            Wording wording,
            ApplicationEventPublisher events) {
        this.records = records;
        this.pages = pages;
        this.earlier = earlier;
        this.wording = wording;
        this.events = events;
    }

    @GetMapping
    String page(@AuthenticationPrincipal SignedIn who, @PathVariable UUID trainee, Model model) {
        TrainingFile file = records.read(who, trainee);
        if (!who.personId().equals(trainee)) {
            Audited.Item item = new Audited.Item("training-record", trainee, null, "");
            events.publishEvent(new RecordSeen(who, trainee, file.programme().id(), item, null));
        }
        return show(file, FormView.empty(), model);
    }

    @PostMapping("/entries")
    String write(
            @AuthenticationPrincipal SignedIn who,
            @PathVariable UUID trainee,
            @RequestParam Map<String, String> typed,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        TrainingDraft draft = new TrainingDraft(
                text(typed, "kind"), text(typed, "exercise"), text(typed, "day"), text(typed, "said"));
        return records.write(who, trainee, draft)
                .fold(
                        entry -> done(redirect, trainee, "training.written"),
                        reasons -> refused(who, trainee, typed, reasons, response, model));
    }

    @PostMapping("/answers")
    String answer(
            @AuthenticationPrincipal SignedIn who,
            @PathVariable UUID trainee,
            @RequestParam Map<String, String> typed,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        TrainingFile file = records.read(who, trainee);
        if (!file.answers()) {
            throw new NotFound();
        }
        Attempt<TrainingEntry> answered = file.entries().stream()
                .filter(one -> one.id().toString().equals(typed.get("entry")))
                .findFirst()
                .map(one -> answer(who, one, typed))
                .orElseGet(() -> Attempt.refused(Refusal.at("entry", "refusal.training.entry")));
        return answered.fold(
                entry -> done(redirect, trainee, "training.answered"),
                reasons -> refused(who, trainee, typed, reasons, response, model));
    }

    private Attempt<TrainingEntry> answer(SignedIn who, TrainingEntry entry, Map<String, String> typed) {
        return switch (text(typed, "answer")) {
            case "YES" -> records.answer(who, entry.traineeId(), entry.id(), true, text(typed, "remark"));
            case "NO" -> records.answer(who, entry.traineeId(), entry.id(), false, text(typed, "remark"));
            default -> Attempt.refused(Refusal.at("answer", "refusal.training.answer"));
        };
    }

    @PostMapping("/experience")
    String declare(
            @AuthenticationPrincipal SignedIn who,
            @PathVariable UUID trainee,
            @RequestParam Map<String, String> typed,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        if (!records.read(who, trainee).declares()) {
            throw new NotFound();
        }
        return earlier.declare(trainee, text(typed, "procedure"), text(typed, "cases"))
                .fold(
                        cases -> done(redirect, trainee, "training.declared"),
                        reasons -> refused(who, trainee, typed, reasons, response, model));
    }

    private String done(RedirectAttributes redirect, UUID trainee, String key) {
        redirect.addFlashAttribute("flash", wording.text(key));
        return "redirect:/training/" + trainee;
    }

    private String refused(
            SignedIn who,
            UUID trainee,
            Map<String, String> typed,
            List<Refusal> reasons,
            HttpServletResponse response,
            Model model) {
        response.setStatus(UNPROCESSABLE);
        return show(records.read(who, trainee), new FormView(typed, wording.errors(reasons)), model);
    }

    private String show(TrainingFile file, FormView form, Model model) {
        model.addAttribute("page", pages.of(file));
        model.addAttribute(
                "answers",
                Stream.of("YES", "NO")
                        .map(answer -> new TrainingPage.Option(answer, wording.text("training.answer." + answer)))
                        .toList());
        model.addAttribute("form", form);
        return "training/record";
    }

    private static String text(Map<String, String> typed, String field) {
        return typed.getOrDefault(field, "");
    }
}
