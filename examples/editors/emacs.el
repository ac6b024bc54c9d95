;; Emacs with its own client (29 or later; before, with the package eglot): put this into init.el, with `feedplot' in
;; the search path.
(define-derived-mode feedplot-mode prog-mode "Feedplot"
  "Plans of live events."
  (setq-local comment-start "// ")
  (setq-local indent-tabs-mode nil)
  (setq-local tab-width 2))
(add-to-list 'auto-mode-alist '("\\.feedplot\\'" . feedplot-mode))
(with-eval-after-load 'eglot
  (add-to-list 'eglot-server-programs '(feedplot-mode . ("feedplot" "serve"))))
(add-hook 'feedplot-mode-hook #'eglot-ensure)
