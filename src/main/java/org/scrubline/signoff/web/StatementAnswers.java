package org.scrubline.signoff.web;

import java.util.List;
import java.util.function.Function;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.Passkeys;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.SignedIn;
import org.scrubline.signoff.SigningStatements;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Component;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/** Answers a form: on to the next page with a sentence, or the form again with what is wrong. */
@Component
class StatementAnswers {

    private static final String PAGE = "signoff/statement";

    private final RecordWords words;
    private final SigningStatements statements;
    private final Passkeys passkeys;

    StatementAnswers(RecordWords words, SigningStatements statements, Passkeys passkeys) {
        this.words = words;
        this.statements = statements;
        this.passkeys = passkeys;
    }

    /**
     * The answer.
     *
     * @param next address to go on to, a path of this server
     * @param said message key of the sentence shown there
     * @param again the form with these reasons
     */
    <T> ModelAndView answer(
            SignedIn who,
            Attempt<T> attempt,
            RedirectAttributes redirect,
            Function<T, String> next,
            String said,
            Function<List<Refusal>, StatementForm> again) {
        return attempt.fold(
                done -> {
                    redirect.addFlashAttribute("flash", words.say(said));
                    return new ModelAndView("redirect:" + next.apply(done));
                },
                reasons -> {
                    ModelAndView page = page(who, again.apply(reasons));
                    page.setStatus(HttpStatus.UNPROCESSABLE_CONTENT);
                    return page;
                });
    }

    /** The form, with what its reader can sign it with. */
    ModelAndView page(SignedIn who, StatementForm form) {
        ModelAndView page = new ModelAndView(PAGE, "page", form);
        page.addObject("accepted", statements.accepted(who.personId()));
        page.addObject("ask", passkeys.askLater(who.accountId()).orElse(null));
        return page;
    }
}
