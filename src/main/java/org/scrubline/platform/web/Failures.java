package org.scrubline.platform.web;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.util.Optional;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.StaleData;
import org.springframework.http.HttpStatus;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.ControllerAdvice;
import org.springframework.web.bind.annotation.ExceptionHandler;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.ResponseStatus;
import org.springframework.web.method.annotation.MethodArgumentTypeMismatchException;
import org.springframework.web.servlet.resource.NoResourceFoundException;

/** Exceptions as pages. Everything not named here ends in the plain error page with a reference, never a stack. */
@ControllerAdvice
class Failures {

    private final ShellAdvice frame;

    Failures(ShellAdvice frame) {
        this.frame = frame;
    }

    @ExceptionHandler({NotFound.class, NoResourceFoundException.class})
    @ResponseStatus(HttpStatus.NOT_FOUND)
    String notFound(Model model, HttpServletRequest request) {
        frame.round(model, request);
        return "error/404";
    }

    /** An id in the path that is no id at all is as unknown as any other. */
    @ExceptionHandler
    String badArgument(
            MethodArgumentTypeMismatchException e,
            Model model,
            HttpServletRequest request,
            HttpServletResponse response) {
        frame.round(model, request);
        boolean inPath = Optional.of(e.getParameter())
                .map(parameter -> parameter.hasParameterAnnotation(PathVariable.class))
                .orElse(false);
        response.setStatus(inPath ? HttpStatus.NOT_FOUND.value() : HttpStatus.BAD_REQUEST.value());
        return inPath ? "error/404" : "error/400";
    }

    @ExceptionHandler
    @ResponseStatus(HttpStatus.CONFLICT)
    String stale(StaleData e, Model model, HttpServletRequest request) {
        frame.round(model, request);
        model.addAttribute("why", e.why());
        model.addAttribute("same", e.why() == StaleData.Why.CHANGED && e.lines().isEmpty());
        model.addAttribute("back", e.back());
        model.addAttribute("lines", e.lines());
        return "error/409";
    }
}
