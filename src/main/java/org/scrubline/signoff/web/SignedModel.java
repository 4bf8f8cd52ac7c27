package org.scrubline.signoff.web;

import org.scrubline.platform.FormView;
import org.scrubline.platform.SignedIn;
import org.scrubline.signoff.SignedSheet;
import org.scrubline.signoff.Versions;
import org.springframework.stereotype.Component;
import org.springframework.web.servlet.ModelAndView;

/** Everything the page of a signed record is made from, for every form on it. */
@Component
class SignedModel {

    private final SignedPages pages;
    private final VersionSignaturePages signatures;
    private final RecordTimesPages times;
    private final Versions versions;
    private final VersionsPages versionsPages;

    SignedModel(
            SignedPages pages,
            VersionSignaturePages signatures,
            RecordTimesPages times,
            Versions versions,
            VersionsPages versionsPages) {
        this.pages = pages;
        this.signatures = signatures;
        this.times = times;
        this.versions = versions;
        this.versionsPages = versionsPages;
    }

    /** The page with a form as it was sent; an empty one when none was. */
    ModelAndView page(SignedIn who, SignedSheet signed, FormView form) {
        ModelAndView page = new ModelAndView("signoff/signed");
        page.addObject("page", pages.of(who, signed));
        page.addObject("versions", versionsPages.of(who, versions.history(who, signed.id()), signed));
        page.addObject("times", times.of(signed));
        page.addObject("signatures", signatures.of(who, signed));
        page.addObject("form", form);
        page.addObject("errors", form.errors());
        page.addObject("body", form.value("body"));
        page.addObject("bodyError", form.error("body"));
        return page;
    }
}
