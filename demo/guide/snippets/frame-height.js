addEventListener('message', ({ data, source }) => {
  for (const frame of document.querySelectorAll('iframe')) {
    if (source === frame.contentWindow && data?.type === 'croftsheet-height') frame.height = data.height;
  }
});
