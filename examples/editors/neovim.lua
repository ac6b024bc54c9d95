-- Neovim 0.7 or later, no plugin: put this into init.lua, with `feedplot` in the search path.
vim.api.nvim_create_autocmd({ 'BufRead', 'BufNewFile' }, {
  pattern = '*.feedplot',
  callback = function(args)
    vim.bo[args.buf].filetype = 'feedplot'
    vim.bo[args.buf].commentstring = '// %s'
    local root = vim.fs and vim.fs.find('.git', { upward = true, path = args.file })[1]
    local config = {
      name = 'feedplot',
      cmd = { 'feedplot', 'serve' },
      root_dir = root and vim.fs.dirname(root) or vim.fn.fnamemodify(args.file, ':p:h'),
    }
    if vim.lsp.start then
      vim.lsp.start(config)
    else
      vim.lsp.buf_attach_client(args.buf, vim.lsp.start_client(config))
    end
  end,
})
